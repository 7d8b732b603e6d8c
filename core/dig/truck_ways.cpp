// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/truck_ways.h"

#include "plane/strip.h"

namespace underlawn {

namespace {

constexpr double kAir = 0.05;  // m more than it has to keep off, so that no rounding is in the way

Machine truck() {
  Machine m;
  m.width = kTruckWidth;
  return m;
}

}  // namespace

TruckWays::TruckWays(const DigGround& ground, const DigWishes& how)
    : ways_(ground, truck(), how.spoil_off), off_(how.spoil_off) {}

// Beside it, and behind either end.
std::vector<Point> TruckWays::stands(const DigStep& step) const {
  const double half = kTruckWidth / 2 + kBesideMachine, aside = step.top / 2 + off_ + half + kAir;
  const double long_ = length(step.line), behind = off_ + half + kAir;
  std::vector<Point> all;
  for (double share : {1.0, 0.75, 0.5, 0.25, 0.0}) {
    const PlaceAlong place = place_along(step.line, share * long_);
    const std::size_t leg = std::min(place.leg, step.line.size() - 2);
    const Point along = unit(step.line[leg + 1] - step.line[leg]);
    for (double side : {1.0, -1.0}) all.push_back(place.at + side * aside * left_normal(along));
  }
  all.push_back(step.line.back() + behind * unit(step.line.back() - step.line[step.line.size() - 2]));
  all.push_back(step.line.front() + behind * unit(step.line.front() - step.line[1]));
  return all;
}

Polyline TruckWays::way(Point from, const DigStep& step, const MachineWays::Standing& standing) const {
  if (step.line.size() < 2) return {};
  return ways_.shortest_way(from, stands(step), standing);
}

}  // namespace underlawn
