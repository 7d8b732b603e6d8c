// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/dimensions.h"

#include <cmath>

#include "layout/given.h"
#include "plane/region.h"

namespace underlawn {

namespace {

bool usable(Point p) {
  return std::isfinite(p.x) && std::isfinite(p.y) && std::abs(p.x) <= kLargestPlan &&
         std::abs(p.y) <= kLargestPlan;
}

// Along which the dimension's line runs; nought where it measures nothing.
Point way_of(const Dimension& d) {
  const Point along = d.to - d.from;
  if (d.way == DimensionWay::level) return {along.x < 0 ? -1.0 : along.x > 0 ? 1.0 : 0.0, 0};
  if (d.way == DimensionWay::upright) return {0, along.y < 0 ? -1.0 : along.y > 0 ? 1.0 : 0.0};
  return norm(along) > kSamePlace ? unit(along) : Point{};
}

bool has(const std::vector<Dimension>& all, int i) {
  return i >= 0 && static_cast<std::size_t>(i) < all.size();
}

// The outlines of a plan in a fixed order, so that those of two plans can be set side by side.
struct Outline {
  std::vector<Point> points;
  bool closed = false;
};

// Where the same one is in another plan; none where it is gone or has other corners.
std::optional<Outline> outline(const Plan& plan, const Feature& like) {
  const Feature* f = find_feature(plan.site, like.id);
  if (f == nullptr || f->points.size() != like.points.size() || f->kind != like.kind) return std::nullopt;
  return Outline{f->points, shape_of(f->kind) == FeatureShape::area};
}

using Pair = std::pair<Outline, Outline>;

std::vector<Pair> moved_outlines(const Plan& before, const Plan& after) {
  std::vector<Pair> pairs;
  const auto add = [&](Outline was, std::optional<Outline> is) {
    if (is && is->points.size() == was.points.size() && is->points != was.points)
      pairs.push_back({std::move(was), std::move(*is)});
  };
  add({lot_ring(before.site), true}, Outline{lot_ring(after.site), true});
  for (const Feature& f : before.site.features)
    add({f.points, shape_of(f.kind) == FeatureShape::area}, outline(after, f));
  if (before.wishes.locked.size() == after.wishes.locked.size())
    for (std::size_t i = 0; i < before.wishes.locked.size(); ++i)
      add({line_of(before.wishes.locked[i]), false}, Outline{line_of(after.wishes.locked[i]), false});
  return pairs;
}

constexpr double kOnIt = 0.002;  // m: where a snap put it, after a trip through a file

std::optional<Point> followed(Point p, const Pair& pair) {
  const auto& [was, is] = pair;
  for (std::size_t i = 0; i < was.points.size(); ++i)
    if (distance(was.points[i], p) <= kOnIt) return is.points[i];
  const std::size_t n = was.points.size(), edges = n < 2 ? 0 : was.closed && n > 2 ? n : n - 1;
  for (std::size_t i = 0; i < edges; ++i) {
    const Point a = was.points[i], b = was.points[(i + 1) % n];
    if (distance(a, b) < kSamePlace || distance(nearest_on({a, b}, p), p) > kOnIt) continue;
    const double share = distance(a, p) / distance(a, b);
    return is.points[i] + share * (is.points[(i + 1) % n] - is.points[i]);
  }
  return std::nullopt;
}

Point followed(Point p, const std::vector<Pair>& pairs) {
  for (const Pair& pair : pairs)
    if (const auto at = followed(p, pair)) return *at;
  return p;
}

}  // namespace

double measured(const Dimension& d) {
  const Point along = d.to - d.from;
  if (d.way == DimensionWay::level) return std::abs(along.x);
  return d.way == DimensionWay::upright ? std::abs(along.y) : norm(along);
}

std::optional<Segment> line_of(const Dimension& d) {
  const Point way = way_of(d);
  if (norm(way) == 0 || measured(d) <= kSamePlace) return std::nullopt;
  const Point a = d.from + d.offset * left_normal(way);
  return Segment{a, a + measured(d) * way};
}

namespace edit {

Plan with_dimension(Plan plan, Dimension d) {
  const bool room = plan.dimensions.size() < static_cast<std::size_t>(kMostDimensions);
  if (room && usable(d.from) && usable(d.to) && std::abs(d.offset) <= kLargestPlan && line_of(d))
    plan.dimensions.push_back(std::move(d));
  return plan;
}

Plan without_dimension(Plan plan, int index) {
  if (has(plan.dimensions, index)) plan.dimensions.erase(plan.dimensions.begin() + index);
  return plan;
}

Plan moved_dimension_part(Plan plan, int index, int part, Point to) {
  if (!has(plan.dimensions, index) || !usable(to)) return plan;
  Dimension d = plan.dimensions[static_cast<std::size_t>(index)];
  if (part == 2)
    d.offset = dot(to - d.from, left_normal(way_of(d)));
  else
    (part == 0 ? d.from : d.to) = to;
  if (line_of(d)) plan.dimensions[static_cast<std::size_t>(index)] = d;
  return plan;
}

Plan moved_dimension(Plan plan, int index, Point by) {
  if (!has(plan.dimensions, index)) return plan;
  Dimension& d = plan.dimensions[static_cast<std::size_t>(index)];
  if (!usable(d.from + by) || !usable(d.to + by)) return plan;
  d.from = d.from + by;
  d.to = d.to + by;
  return plan;
}

Plan with_dimensions_following(const Plan& before, Plan after) {
  if (after.dimensions.empty() || before.dimensions != after.dimensions) return after;
  const std::vector<Pair> pairs = moved_outlines(before, after);
  if (pairs.empty()) return after;
  for (Dimension& d : after.dimensions) {
    Dimension moved = d;
    moved.from = followed(d.from, pairs);
    moved.to = followed(d.to, pairs);
    if (line_of(moved) && usable(moved.from) && usable(moved.to)) d = moved;
  }
  return after;
}

}  // namespace edit

}  // namespace underlawn
