// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/machine_ways.h"

#include <algorithm>
#include <array>
#include <iterator>

#include "plane/route.h"
#include "plane/sight.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

constexpr std::array kStandsBack = {0.5, 0.65, 0.8, 0.95};  // of its reach, behind where it digs, best first
constexpr double kMostShift = 3;    // m that the start of a way may be moved to get off what is in the way
constexpr double kOffTheLot = 0.3;  // m that the machine's middle may be beyond the lot line at the street

Region rings_grown(const std::vector<Ring>& rings, double by) {
  std::vector<Region> parts;
  for (const Ring& ring : rings) parts.push_back(region_of(ring));
  const Region all = unite(parts);
  return by > 0 ? grown(all, by) : all;
}

std::vector<Point> held_by(const Sight& free, const std::vector<Point>& places) {
  std::vector<Point> held;
  std::copy_if(places.begin(), places.end(), std::back_inserter(held),
               [&](Point p) { return free.holds(p); });
  return held;
}

}  // namespace

std::vector<Drive> drives_of(const DigOrder& order, const Machine& excavator) {
  std::vector<Drive> all;
  const auto add = [&all](const Polyline& way, double width) {
    if (!way.empty()) all.push_back({&way, width});
  };
  for (const DigStep& step : order.steps) {
    add(step.way, excavator.width);
    add(step.truck_way, kTruckWidth);
    add(step.fill_way, kTruckWidth);
  }
  add(order.way_out, excavator.width);
  return all;
}

MachineWays::MachineWays(const DigGround& ground, const Machine& machine, double off)
    : half_(machine.width / 2 + kBesideMachine),
      off_(off),
      reach_(machine.reach),
      ground_(grown(ground.open, -half_)),
      sight_(ground_),
      room_(ground, ground_, machine.width) {}

std::vector<Point> MachineWays::stands_to_begin(const Polyline& line) const {
  std::vector<Point> all;
  for (double share : kStandsBack)
    all.push_back(place_along(line, std::min(share * reach_, length(line))).at);
  return all;
}

std::optional<Point> MachineWays::stand_at_end(const DigStep& step, const Polyline& line, int away,
                                               const Standing& standing) const {
  const Point end = line.back(), along = unit(end - line[line.size() - 2]);
  const auto good = [&](Point p) { return sight_.holds(p) && off(p, p, standing); };
  for (double share : kStandsBack)
    if (const Point beyond = end + share * reach_ * along; good(beyond)) return beyond;
  const double aside = step.top / 2 + off_ + half_;
  for (int side : {1, -1}) {
    if (away != 0 && side != away) continue;
    const Point beside = end + side * aside * left_normal(along) - half_ * along;
    if (aside < reach_ && good(beside)) return beside;
  }
  return std::nullopt;
}

bool MachineWays::off(Point from, Point to, const Standing& standing) const {
  for (const Ring& ring : standing.trenches)
    if (line_area_distance({from, to}, ring) < off_ + half_ - kSamePlace) return false;
  for (const Ring& ring : standing.heaps)
    if (line_area_distance({from, to}, ring) < half_ - kSamePlace) return false;
  return true;
}

bool MachineWays::clear(Point from, Point to, const Standing& standing) const {
  if (!wide_) wide_.emplace(room_.widest({}));
  return wide_->sees(from, to) && off(from, to, standing);
}

Region MachineWays::taken(const Standing& standing) const {
  return unite({rings_grown(standing.trenches, off_ + half_), rings_grown(standing.heaps, half_)});
}

// In from the street; not off the edge of what is open.
Polyline MachineWays::from_street(Point from, Polyline line, const Standing& standing) const {
  if (distance(from, line.front()) > kOffTheLot && off(from, line.front(), standing))
    line.insert(line.begin(), from);
  return line;
}

// On the ground that keeps well off walls it does not begin somewhere else than where the machine can go.
std::optional<Point> MachineWays::start_of(Point from, const Sight& free, bool wide) const {
  const Point start = free.nearest(from);
  if (distance(start, from) > kMostShift + half_) return std::nullopt;
  if (wide && distance(start, from) > distance(sight_.nearest(from), from) + kSamePlace &&
      !sight_.sees(from, start))
    return std::nullopt;
  return start;
}

Polyline MachineWays::first_way(Point from, const Ends& places, const Standing& standing,
                                const Free& free) const {
  if (free.region.empty()) return {};
  Router router(free.region, std::vector<DearGround>{}, 0);
  const auto start = start_of(from, router.free(), free.wide);
  if (!start) return {};
  std::vector<Point> ends = held_by(router.free(), places);
  // Beside the best of them, where nothing but its own width is in the way: the bucket still reaches.
  if (const Point beside = router.free().nearest(places.front());
      !free.wide && distance(beside, places.front()) < (1 - kStandsBack.front()) * reach_)
    ends.push_back(beside);
  for (Point to : ends) {
    const auto route = router.route(*start, to);
    if (!route) continue;
    Polyline line = from_street(from, route->line, standing);
    return line.size() > 1 ? line : Polyline{*start, to};
  }
  return {};
}

Polyline MachineWays::nearest_way(Point from, const Ends& places, const Standing& standing,
                                  const Free& free) const {
  if (free.region.empty()) return {};
  Router router(free.region, std::vector<DearGround>{}, 0);
  const auto start = start_of(from, router.free(), free.wide);
  if (!start) return {};
  std::vector<Point> open = held_by(router.free(), places);
  std::erase_if(open, [&](Point p) { return distance(p, *start) <= kSamePlace; });
  const auto route = router.route_to_any(*start, open);
  return route ? from_street(from, route->line, standing) : Polyline{};
}

template <class Try>
Polyline MachineWays::first_of(Point from, const Ends& places, const Standing& standing, Try way_on) const {
  const Region taken_now = taken(standing);
  Polyline line = way_on(Free{part_joining(room_.widest(taken_now), from, places), true});
  if (line.empty()) line = way_on(Free{room_.widest_way(taken_now, from, places), true});
  return line.empty() ? way_on(Free{subtract(ground_, taken_now), false}) : line;
}

Polyline MachineWays::way(Point from, const std::vector<Point>& places, const Standing& standing) const {
  for (Point to : places)
    if (clear(from, to, standing)) return {from, to};
  return first_of(from, places, standing,
                  [&](const Free& free) { return first_way(from, places, standing, free); });
}

Polyline MachineWays::shortest_way(Point from, const std::vector<Point>& places,
                                   const Standing& standing) const {
  return first_of(from, places, standing,
                  [&](const Free& free) { return nearest_way(from, places, standing, free); });
}

}  // namespace underlawn
