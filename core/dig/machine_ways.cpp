// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/machine_ways.h"

#include <algorithm>
#include <limits>

#include "plane/route.h"
#include "plane/sight.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

constexpr double kStandsBack = 0.5;  // of its reach, behind where it digs
constexpr double kMostShift = 3;     // m that an end of a way may be moved to get off what is in the way
constexpr double kOffTheLot = 0.3;   // m that the machine's middle may be beyond the lot line at the street

Region rings_grown(const std::vector<Ring>& rings, double by) {
  std::vector<Region> parts;
  for (const Ring& ring : rings) parts.push_back(region_of(ring));
  const Region all = unite(parts);
  return by > 0 ? grown(all, by) : all;
}

}  // namespace

MachineWays::MachineWays(const DigGround& ground, const Machine& machine, double off)
    : half_(machine.width / 2 + kBesideMachine),
      off_(off),
      reach_(machine.reach),
      ground_(grown(ground.open, -half_)),
      sight_(ground_) {}

Point MachineWays::stand_to_begin(const Polyline& line) const {
  return place_along(line, std::min(kStandsBack * reach_, length(line))).at;
}

std::optional<Point> MachineWays::stand_at_end(const DigStep& step, const Polyline& line, int away) const {
  const Point end = line.back(), along = unit(end - line[line.size() - 2]);
  const Point beyond = end + kStandsBack * reach_ * along;
  if (sight_.holds(beyond)) return beyond;
  const double aside = step.top / 2 + off_ + half_;
  for (int side : {1, -1}) {
    if (away != 0 && side != away) continue;
    const Point beside = end + side * aside * left_normal(along) - half_ * along;
    if (aside < reach_ && sight_.holds(beside)) return beside;
  }
  return std::nullopt;
}

bool MachineWays::clear(Point from, Point to, const Standing& standing) const {
  if (!sight_.sees(from, to)) return false;
  for (const Ring& ring : standing.trenches)
    if (line_area_distance({from, to}, ring) < off_ + half_ - kSamePlace) return false;
  for (const Ring& ring : standing.heaps)
    if (line_area_distance({from, to}, ring) < half_ - kSamePlace) return false;
  return true;
}

Region MachineWays::free(const Standing& standing) const {
  return subtract(ground_,
                  unite({rings_grown(standing.trenches, off_ + half_), rings_grown(standing.heaps, half_)}));
}

Polyline MachineWays::way(Point from, Point to, const Standing& standing) const {
  if (distance(from, to) < kSamePlace) return {from, to};
  if (clear(from, to, standing)) return {from, to};
  const Region region = free(standing);
  const Sight sight(region);
  const Point start = sight.nearest(from), goal = sight.nearest(to);
  if (region.empty() || distance(start, from) > kMostShift + half_ || distance(goal, to) > kMostShift)
    return {};
  const auto route = shortest_route({start, goal, region, {}, 0});
  if (!route) return {};
  Polyline line;
  if (distance(from, start) > kOffTheLot) line.push_back(from);
  line.insert(line.end(), route->line.begin(), route->line.end());
  if (distance(to, goal) > kOffTheLot) line.push_back(to);
  return line.size() > 1 ? line : Polyline{from, to};
}

Polyline MachineWays::shortest_way(Point from, const std::vector<Point>& places,
                                   const Standing& standing) const {
  const Region region = free(standing);
  Router router(region, std::vector<DearGround>{}, 0);
  const Point start = router.free().nearest(from);
  if (region.empty() || distance(start, from) > kMostShift + half_) return {};
  std::vector<Point> open;
  std::copy_if(places.begin(), places.end(), std::back_inserter(open),
               [&](Point p) { return router.free().holds(p) && distance(p, start) > kSamePlace; });
  const auto route = router.route_to_any(start, open);
  if (!route) return {};
  Polyline best = route->line;
  if (best.size() > 1 && distance(from, start) > kOffTheLot) best.insert(best.begin(), from);
  return best;
}

}  // namespace underlawn
