// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/closed_side.h"

#include <algorithm>

#include "base/say.h"
#include "plane/region.h"

namespace underlawn {

namespace {

constexpr double kBeyondLot = 1;  // m
constexpr int kHighestId = 2'000'000'000;

// The part of a convex ring on the side of the line that `outward` points to.
Ring cut_by(const Ring& ring, Point on_line, Point outward) {
  Ring out;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i], b = ring[(i + 1) % ring.size()];
    const double from = dot(a - on_line, outward), to = dot(b - on_line, outward);
    if (from >= 0) out.push_back(a);
    if ((from < 0) != (to < 0)) out.push_back(a + (from / (from - to)) * (b - a));
  }
  return out;
}

Point outward_of(const Ring& house, const Segment& wall) {
  double twice = 0;
  for (std::size_t i = 0; i < house.size(); ++i) twice += cross(house[i], house[(i + 1) % house.size()]);
  const Point left = left_normal(unit(wall.b - wall.a));
  return twice > 0 ? -1.0 * left : left;
}

Trouble no_wall(const ClosedSide& side, const std::string& bound) {
  return {
      "closed_side_not_there",
      say("closed side: wall {} of house {}", std::to_string(side.wall + 1), std::to_string(side.house_id)),
      say("not there"), bound, say("Close a wall that is drawn, or open this side again.")};
}

int highest_id(const Site& site) {
  int highest = 0;
  for (const Feature& f : site.features) highest = std::max(highest, f.id);
  return std::min(highest, kHighestId);
}

}  // namespace

Result<Ring> beyond_wall(const Site& site, const ClosedSide& side) {
  const Feature* house = find_feature(site, side.house_id);
  if (house == nullptr || house->kind != FeatureKind::house || house->points.size() < 3)
    return refuse(no_wall(side, say("a house on the lot")));
  const int walls = static_cast<int>(house->points.size());
  if (side.wall < 0 || side.wall >= walls)
    return refuse(no_wall(side, say("walls 1 to {}", std::to_string(walls))));
  const auto at = static_cast<std::size_t>(side.wall);
  const Segment wall{house->points[at], house->points[(at + 1) % house->points.size()]};
  if (!(distance(wall.a, wall.b) > kSamePlace)) return refuse(no_wall(side, say("a wall with a length")));
  if (site.lot.empty()) return Ring{};
  Box box = bounds(lot_ring(site));
  const auto on_plan = [](double v) { return std::clamp(v, -kLargestPlan, kLargestPlan); };
  box.low = {on_plan(box.low.x - kBeyondLot), on_plan(box.low.y - kBeyondLot)};
  box.high = {on_plan(box.high.x + kBeyondLot), on_plan(box.high.y + kBeyondLot)};
  const Ring all = {box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}};
  const Ring beyond = cut_by(all, wall.a, outward_of(house->points, wall));
  return beyond.size() < 3 || area(beyond) < kSamePlace ? Ring{} : beyond;
}

Site with_closed_sides(const Site& site, const Wishes& wishes) {
  Site with = site;
  int id = highest_id(site);
  for (const ClosedSide& side : wishes.closed) {
    ++id;
    const auto ring = beyond_wall(site, side);
    if (!ring || ring->empty()) continue;
    Feature f;
    f.id = id;
    f.kind = FeatureKind::easement;
    f.points = *ring;
    f.trench_clearance = 0;
    f.run_clearance = 0;
    with.features.push_back(std::move(f));
  }
  return with;
}

int closed_side_of(const Site& site, const Wishes& wishes, int feature_id) {
  const int which = feature_id - highest_id(site) - 1;
  return which >= 0 && which < static_cast<int>(wishes.closed.size()) ? which : -1;
}

std::vector<Trouble> closed_side_troubles(const Site& site, const Wishes& wishes) {
  std::vector<Trouble> troubles;
  for (const ClosedSide& side : wishes.closed)
    if (auto ring = beyond_wall(site, side); !ring) troubles.push_back(ring.error());
  return troubles;
}

}  // namespace underlawn
