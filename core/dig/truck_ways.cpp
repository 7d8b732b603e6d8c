// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/truck_ways.h"

#include <algorithm>

#include "plane/strip.h"

namespace underlawn {

namespace {

constexpr double kAir = 0.05;   // m more than it has to keep off, so that no rounding is in the way
constexpr double kFarther = 1;  // m from one place that is tried to the next

Machine truck() {
  Machine m;
  m.width = kTruckWidth;
  return m;
}

}  // namespace

TruckWays::TruckWays(const DigGround& ground, const DigWishes& how)
    : ways_(ground, truck(), how.spoil_off), off_(how.spoil_off), reach_(how.excavator.reach) {}

// Behind and beside its end, or beside the rest and before its beginning, as far off as the bucket reaches.
std::vector<Point> TruckWays::stands(const DigStep& step, bool at_end) const {
  const std::vector<double> shares =
      at_end ? std::vector<double>{1.0} : std::vector<double>{0.75, 0.5, 0.25, 0.0};
  const double half = kTruckWidth / 2 + kBesideMachine, long_ = length(step.line);
  const Point first = unit(step.line[1] - step.line.front());
  const Point last = unit(step.line.back() - step.line[step.line.size() - 2]);
  std::vector<Point> all;
  for (double off = off_ + half + kAir; off <= reach_; off += kFarther) {
    all.push_back(at_end ? step.line.back() + off * last : step.line.front() - off * first);
    for (double share : shares) {
      const PlaceAlong place = place_along(step.line, share * long_);
      const std::size_t leg = std::min(place.leg, step.line.size() - 2);
      const Point across = left_normal(unit(step.line[leg + 1] - step.line[leg]));
      for (double side : {1.0, -1.0}) all.push_back(place.at + side * (step.top / 2 + off) * across);
    }
  }
  return all;
}

Polyline TruckWays::way(Point from, const DigStep& step, const MachineWays::Standing& standing) const {
  if (step.line.size() < 2) return {};
  Polyline way = ways_.shortest_way(from, stands(step, true), standing);
  return way.empty() ? ways_.shortest_way(from, stands(step, false), standing) : way;
}

}  // namespace underlawn
