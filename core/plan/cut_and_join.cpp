// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/cut_and_join.h"

#include <algorithm>
#include <optional>

#include "base/say.h"
#include "layout/given.h"
#include "plan/edits.h"
#include "plane/region.h"

namespace underlawn::edit {

namespace {

Trouble cannot(const char* code, std::string thing, std::string bound, std::string advice) {
  return {code, std::move(thing), "", std::move(bound), std::move(advice)};
}

struct Cut {
  Polyline first, second;
};

// At the place of the line nearest to `at`; none at an end.
std::optional<Cut> cut_line(const Polyline& line, Point at) {
  std::size_t leg = 0;
  Point place = line.front();
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Point near = nearest_on({line[i], line[i + 1]}, at);
    if (i > 0 && distance(near, at) >= distance(place, at)) continue;
    place = near;
    leg = i;
  }
  Cut cut{{line.begin(), line.begin() + static_cast<std::ptrdiff_t>(leg) + 1}, {place}};
  if (distance(cut.first.back(), place) > kSamePlace) cut.first.push_back(place);
  for (std::size_t i = leg + 1; i < line.size(); ++i)
    if (distance(cut.second.back(), line[i]) > kSamePlace) cut.second.push_back(line[i]);
  if (cut.first.size() < 2 || cut.second.size() < 2) return std::nullopt;
  return cut;
}

Trouble at_the_end(const std::string& name) {
  return cannot("cut_at_the_end", say("The cut of {}", name), say("between its ends"),
                say("Point at a place along it where it is to be cut."));
}

// Half of the plane, so large that every plan is in it.
Ring half_plane(Segment cut, bool left) {
  constexpr double kFar = 4 * kLargestPlan;
  const Point way = unit(cut.b - cut.a), side = (left ? 1.0 : -1.0) * left_normal(way);
  const Point a = cut.a - kFar / 2 * way, b = cut.a + kFar / 2 * way;
  return left ? Ring{a, b, b + kFar / 2 * side, a + kFar / 2 * side}
              : Ring{b, a, a + kFar / 2 * side, b + kFar / 2 * side};
}

// Corners that the clipper moved by a step of its grid go back to where they were drawn.
Ring on_corners(Ring ring, const Ring& drawn) {
  for (Point& p : ring)
    for (Point corner : drawn)
      if (distance(p, corner) < 3 * kGrid) p = corner;
  return ring;
}

// What was cut and is joined again has no corner where it was cut.
void drop_if_straight(Polyline& line, std::size_t i) {
  if (i == 0 || i + 1 >= line.size()) return;
  if (distance(nearest_on({line[i - 1], line[i + 1]}, line[i]), line[i]) <= kSamePlace)
    line.erase(line.begin() + static_cast<std::ptrdiff_t>(i));
}

// The lines end to end; none where an end is farther than `reach` from every other.
std::optional<Polyline> chained(std::vector<Polyline> parts, double reach) {
  Polyline line = std::move(parts.front());
  parts.erase(parts.begin());
  while (!parts.empty()) {
    double best = reach;
    std::size_t which = parts.size();
    bool at_front = false, back_first = false;
    for (std::size_t i = 0; i < parts.size(); ++i)
      for (const bool front : {false, true})
        for (const bool back : {false, true}) {
          const double away =
              distance(front ? line.front() : line.back(), back ? parts[i].back() : parts[i].front());
          if (away > best || (away == best && which < parts.size())) continue;
          best = away;
          which = i;
          at_front = front;
          back_first = back;
        }
    if (which == parts.size()) return std::nullopt;
    Polyline next = std::move(parts[which]);
    parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(which));
    if (back_first) std::reverse(next.begin(), next.end());
    if (at_front) std::reverse(line.begin(), line.end());
    const std::size_t seam = line.size() - 1;
    for (Point p : next)
      if (distance(line.back(), p) > kSamePlace) line.push_back(p);
    drop_if_straight(line, seam);
  }
  return line;
}

Result<Plan> lines_joined(Plan plan, const std::vector<const Feature*>& all, double reach) {
  std::vector<Polyline> parts;
  parts.reserve(all.size());
  for (const Feature* f : all) parts.push_back(f->points);
  const auto line = chained(std::move(parts), reach);
  if (!line)
    return refuse(cannot("join_apart", say("These lines"), say("end to end"),
                         say("Move an end of the one onto an end of the other, then join them.")));
  Feature first = *all.front();
  first.points = *line;
  for (std::size_t i = 1; i < all.size(); ++i) plan = without_feature(std::move(plan), all[i]->id);
  return with_feature(std::move(plan), std::move(first));
}

Result<Plan> areas_joined(Plan plan, const std::vector<const Feature*>& all) {
  std::vector<Region> parts;
  Ring corners;
  for (const Feature* f : all) {
    parts.push_back(region_of(f->points));
    corners.insert(corners.end(), f->points.begin(), f->points.end());
  }
  // Drawn side by side, they may be a hair apart.
  constexpr double kHair = 0.002;
  Region one = unite(parts);
  if (one.size() > 1) one = grown(grown(one, kHair), -kHair);
  if (one.size() != 1)
    return refuse(cannot("join_apart", say("These areas"), say("touching each other"),
                         say("Move or reshape them until they meet, then join them.")));
  if (!one.front().holes.empty())
    return refuse(cannot("join_hole", say("The area made of these"), say("without a hole inside"),
                         say("Fill the hole with another area first, or leave them apart.")));
  Feature first = *all.front();
  first.points = on_corners(one.front().outer, corners);
  if (const auto ring = checked_ring(first.points, say("joined area"))) first.points = *ring;
  for (std::size_t i = 1; i < all.size(); ++i) plan = without_feature(std::move(plan), all[i]->id);
  return with_feature(std::move(plan), std::move(first));
}

}  // namespace

Result<Plan> line_cut(Plan plan, int id, Point at) {
  const Feature* there = find_feature(plan.site, id);
  if (there == nullptr || shape_of(there->kind) != FeatureShape::line || there->points.size() < 2)
    return refuse(
        cannot("cut_no_line", say("This"), say("a line"), say("Point at a utility line or a drawn trench.")));
  const auto cut = cut_line(there->points, at);
  if (!cut) return refuse(at_the_end(display_name(*there)));
  Feature first = *there, second = *there;
  first.points = cut->first;
  second.points = cut->second;
  second.id = next_feature_id(plan);
  return with_feature(with_feature(std::move(plan), std::move(first)), std::move(second));
}

Result<Plan> trench_cut(Plan plan, int locked, Point at) {
  auto& all = plan.wishes.locked;
  if (locked < 0 || static_cast<std::size_t>(locked) >= all.size())
    return refuse(
        cannot("cut_no_line", say("This"), say("a line"), say("Point at a utility line or a drawn trench.")));
  const GivenTrench whole = all[static_cast<std::size_t>(locked)];
  const Polyline line = line_of(whole);
  const auto cut = cut_line(line, at);
  if (!cut) return refuse(at_the_end(say("the trench")));
  const auto made = [&](const Polyline& part) {
    GivenTrench t = whole;
    t.head = part.front();
    t.end = part.back();
    t.bends.assign(part.begin() + 1, part.end() - 1);
    t.coil_length = whole.coil_length * length(part) / length(line);
    return t;
  };
  all[static_cast<std::size_t>(locked)] = made(cut->first);
  all.push_back(made(cut->second));
  return plan;
}

Result<Plan> area_cut(Plan plan, int id, Segment cut) {
  const Feature* there = find_feature(plan.site, id);
  if (there == nullptr || shape_of(there->kind) != FeatureShape::area)
    return refuse(cannot("cut_no_area", say("This"), say("an area"), say("Point at an area.")));
  if (distance(cut.a, cut.b) < kSamePlace)
    return refuse(
        cannot("cut_no_way", say("The cut"), say("between two places"), say("Point at another place.")));
  const auto ring = checked_ring(there->points, display_name(*there));
  if (!ring) return refuse(ring.error());
  std::vector<Ring> parts;
  for (const bool left : {true, false})
    for (const Polygon& part : intersect(region_of(*ring), region_of(half_plane(cut, left))))
      if (area(part.outer) > 1e-4) parts.push_back(on_corners(part.outer, *ring));
  if (parts.size() < 2)
    return refuse(cannot("cut_misses", say("The cut of {}", display_name(*there)), say("through it"),
                         say("Point at two places so that the line between them crosses it.")));
  std::stable_sort(parts.begin(), parts.end(),
                   [](const Ring& a, const Ring& b) { return area(a) > area(b); });
  const Feature whole = *there;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    Feature part = whole;
    part.points = parts[i];
    if (i > 0) part.id = next_feature_id(plan);
    plan = with_feature(std::move(plan), std::move(part));
  }
  return plan;
}

Result<Plan> joined(Plan plan, const std::vector<int>& ids, double reach) {
  std::vector<const Feature*> all;
  for (int id : ids)
    if (const Feature* f = find_feature(plan.site, id)) all.push_back(f);
  if (all.size() < 2)
    return refuse(cannot("join_one", say("Join"), say("of two utilities or two areas of one kind at least"),
                         say("Select them with Shift and a click, or with a box.")));
  const Feature& first = *all.front();
  const bool alike = std::all_of(all.begin(), all.end(), [&](const Feature* f) {
    return f->kind == first.kind && (f->kind != FeatureKind::utility || f->utility == first.utility);
  });
  if (!alike || shape_of(first.kind) == FeatureShape::point)
    return refuse(cannot("join_unlike", say("Join"), say("of lines or areas of one kind"),
                         say("Select utilities that carry the same, or areas of the same kind.")));
  const std::vector<Feature> kept = [&] {
    std::vector<Feature> copies;
    copies.reserve(all.size());
    for (const Feature* f : all) copies.push_back(*f);
    return copies;
  }();
  std::vector<const Feature*> those;
  those.reserve(kept.size());
  for (const Feature& f : kept) those.push_back(&f);
  return shape_of(first.kind) == FeatureShape::line ? lines_joined(std::move(plan), those, reach)
                                                    : areas_joined(std::move(plan), those);
}

}  // namespace underlawn::edit
