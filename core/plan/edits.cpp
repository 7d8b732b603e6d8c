// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/edits.h"

#include <algorithm>
#include <cmath>

#include "layout/given.h"
#include "plan/dimensions.h"
#include "plane/region.h"

namespace underlawn::edit {

namespace {

bool usable(double v) {
  return std::isfinite(v) && std::abs(v) <= kLargestPlan;
}
bool usable(Point p) {
  return usable(p.x) && usable(p.y);
}
bool usable(const std::vector<Point>& points) {
  return std::all_of(points.begin(), points.end(), [](Point p) { return usable(p); });
}

std::size_t least_points(FeatureKind kind) {
  switch (shape_of(kind)) {
    case FeatureShape::area:
      return 3;
    case FeatureShape::line:
      return 2;
    case FeatureShape::point:
      return 1;
  }
  return 1;
}

bool usable(const Feature& f) {
  const std::size_t least = least_points(f.kind);
  return f.id >= 0 && usable(f.points) && f.points.size() >= least && (least > 1 || f.points.size() == 1);
}

Feature* found(Plan& plan, int id) {
  for (Feature& f : plan.site.features)
    if (f.id == id) return &f;
  return nullptr;
}

// A place on a house wall: the wall that starts at corner `wall`, at `share` of its length.
struct WallPlace {
  int house_id = 0;
  std::size_t wall = 0;
  double share = 0;
  Point at;
  double away = std::numeric_limits<double>::infinity();
};

void take_nearer(WallPlace& best, const Feature& house, Point p) {
  for (std::size_t i = 0; i < house.points.size(); ++i) {
    const Segment wall = {house.points[i], house.points[(i + 1) % house.points.size()]};
    const Point on = nearest_on(wall, p);
    const double away = distance(on, p);
    const double long_ = distance(wall.a, wall.b);
    if (away < best.away) best = {house.id, i, long_ > 0 ? distance(wall.a, on) / long_ : 0, on, away};
  }
}

WallPlace nearest_wall(const Feature& house, Point p) {
  WallPlace best;
  take_nearer(best, house, p);
  return best;
}

// Puts the entry point back on the wall of a house whose outline has changed under it.
void keep_entry_on_wall(Plan& plan, const Feature& before, const Feature& after) {
  auto& entry = plan.site.entry;
  if (!entry || entry->house_id != before.id || before.points == after.points) return;
  const WallPlace was = nearest_wall(before, entry->at);
  if (before.points.size() != after.points.size()) {
    entry->at = nearest_wall(after, entry->at).at;
    return;
  }
  const Point a = after.points[was.wall];
  const Point b = after.points[(was.wall + 1) % after.points.size()];
  entry->at = a + was.share * (b - a);
}

// Does the finding's key speak of this feature? Keys are parts between slashes, "feature-7" one of them.
bool speaks_of(const std::string& key, int id) {
  const std::string part = "/feature-" + std::to_string(id);
  for (std::size_t at = key.find(part); at != std::string::npos; at = key.find(part, at + 1))
    if (at + part.size() == key.size() || key[at + part.size()] == '/') return true;
  return false;
}

std::vector<Point>* points_of(Plan& plan, const Handle& handle) {
  if (handle.kind != Handle::Kind::feature_point) return nullptr;
  Feature* f = found(plan, handle.feature_id);
  return f != nullptr ? &f->points : nullptr;
}

// Two points or more, none on the one before.
bool is_line(const Polyline& line) {
  for (std::size_t i = 1; i < line.size(); ++i)
    if (distance(line[i - 1], line[i]) < kSamePlace) return false;
  return line.size() >= 2;
}

template <class T>
bool has(const std::vector<T>& list, int index) {
  return index >= 0 && static_cast<std::size_t>(index) < list.size();
}

Plan moved_height(Plan plan, int index, Point to) {
  if (has(plan.site.heights, index)) plan.site.heights[static_cast<std::size_t>(index)].at = to;
  return plan;
}

Plan moved_corner(Plan plan, int index, Point to) {
  if (has(plan.site.lot, index)) plan.site.lot[static_cast<std::size_t>(index)].at = to;
  return plan;
}

// Changes a feature's points, and with them whatever hangs on them.
template <class Change>
Plan reshaped(Plan plan, int id, Change change) {
  const Feature* f = found(plan, id);
  if (f == nullptr) return plan;
  Feature after = *f;
  change(after.points);
  return with_feature(std::move(plan), std::move(after));
}

// Changes the middle line of a locked trench, where a trench is left.
template <class Change>
Plan with_locked_line(Plan plan, int index, Change change) {
  if (!has(plan.wishes.locked, index)) return plan;
  GivenTrench& t = plan.wishes.locked[static_cast<std::size_t>(index)];
  Polyline line = line_of(t);
  change(line);
  if (!usable(line) || !is_line(line)) return plan;
  t.head = line.front();
  t.end = line.back();
  t.bends.assign(line.begin() + 1, line.end() - 1);
  return plan;
}

}  // namespace

int next_feature_id(const Plan& plan) {
  int highest = 0;
  for (const Feature& f : plan.site.features) highest = std::max(highest, f.id);
  return highest == std::numeric_limits<int>::max() ? 0 : highest + 1;
}

Plan with_lot(Plan plan, const Ring& corners, double setback) {
  if (corners.size() < 3 || !usable(corners) || !usable(setback) || setback < 0) return plan;
  plan.site.lot.clear();
  for (Point p : corners) plan.site.lot.push_back({p, setback});
  return plan;
}

Plan with_setback(Plan plan, int edge, double setback) {
  if (has(plan.site.lot, edge) && usable(setback) && setback >= 0)
    plan.site.lot[static_cast<std::size_t>(edge)].setback = setback;
  return plan;
}

Plan with_feature(Plan plan, Feature feature) {
  if (!usable(feature)) return plan;
  if (feature.id == 0) feature.id = next_feature_id(plan);
  if (feature.id == 0) return plan;
  if (Feature* there = found(plan, feature.id)) {
    if (feature.kind == FeatureKind::house)
      keep_entry_on_wall(plan, *there, feature);
    else if (plan.site.entry && plan.site.entry->house_id == feature.id)
      plan.site.entry.reset();
    *there = std::move(feature);
    return plan;
  }
  auto& all = plan.site.features;
  const auto after =
      std::find_if(all.begin(), all.end(), [&](const Feature& f) { return f.id > feature.id; });
  all.insert(after, std::move(feature));
  return plan;
}

Plan without_feature(Plan plan, int id) {
  if (std::erase_if(plan.site.features, [id](const Feature& f) { return f.id == id; }) == 0) return plan;
  if (plan.site.entry && plan.site.entry->house_id == id) plan.site.entry.reset();
  std::erase_if(plan.accepted, [id](const Acceptance& a) { return speaks_of(a.finding, id); });
  return plan;
}

Plan without_lot(Plan plan) {
  plan.site.lot.clear();
  return plan;
}

Plan moved_feature(Plan plan, int id, Point by) {
  return reshaped(std::move(plan), id, [by](std::vector<Point>& points) {
    for (Point& p : points) p = p + by;
  });
}

Plan moved_lot(Plan plan, Point by) {
  for (const LotCorner& c : plan.site.lot)
    if (!usable(c.at + by)) return plan;
  for (LotCorner& c : plan.site.lot) c.at = c.at + by;
  return plan;
}

Plan rotated_feature(Plan plan, int id, double radians, Point about) {
  return reshaped(std::move(plan), id, [radians, about](std::vector<Point>& points) {
    for (Point& p : points) p = about + rotated(p - about, radians);
  });
}

Plan moved_handle(Plan plan, const Handle& handle, Point to) {
  if (!usable(to)) return plan;
  if (handle.kind == Handle::Kind::locked_point)
    return moved_locked_handle(std::move(plan), handle.feature_id, handle.index, to);
  if (handle.kind == Handle::Kind::dimension)
    return moved_dimension_part(std::move(plan), handle.feature_id, handle.index, to);
  if (handle.kind == Handle::Kind::lot_corner) return moved_corner(std::move(plan), handle.index, to);
  if (handle.kind == Handle::Kind::height) return moved_height(std::move(plan), handle.index, to);
  if (handle.kind == Handle::Kind::entry) return plan.site.entry ? with_entry(std::move(plan), to) : plan;
  const auto* points = points_of(plan, handle);
  if (points == nullptr || !has(*points, handle.index)) return plan;
  return reshaped(std::move(plan), handle.feature_id,
                  [&](std::vector<Point>& p) { p[static_cast<std::size_t>(handle.index)] = to; });
}

Plan inserted_point(Plan plan, const Handle& before_next, Point at) {
  if (!usable(at)) return plan;
  const auto next = static_cast<std::ptrdiff_t>(before_next.index) + 1;
  if (before_next.kind == Handle::Kind::locked_point)
    return with_locked_line(std::move(plan), before_next.feature_id, [&](Polyline& line) {
      if (has(line, before_next.index + 1) && before_next.index >= 0) line.insert(line.begin() + next, at);
    });
  if (before_next.kind == Handle::Kind::lot_corner && has(plan.site.lot, before_next.index)) {
    const double setback = plan.site.lot[static_cast<std::size_t>(before_next.index)].setback;
    plan.site.lot.insert(plan.site.lot.begin() + next, {at, setback});
    return plan;
  }
  const auto* points = points_of(plan, before_next);
  if (points == nullptr || !has(*points, before_next.index)) return plan;
  const FeatureShape shape = shape_of(found(plan, before_next.feature_id)->kind);
  const bool last = before_next.index + 1 == static_cast<int>(points->size());
  if (shape == FeatureShape::point || (shape == FeatureShape::line && last)) return plan;
  return reshaped(std::move(plan), before_next.feature_id,
                  [&](std::vector<Point>& p) { p.insert(p.begin() + next, at); });
}

Plan removed_point(Plan plan, const Handle& handle) {
  if (handle.kind == Handle::Kind::locked_point)
    return with_locked_line(std::move(plan), handle.feature_id, [&](Polyline& line) {
      if (has(line, handle.index)) line.erase(line.begin() + handle.index);
    });
  if (handle.kind == Handle::Kind::height) return without_height(std::move(plan), handle.index);
  if (handle.kind == Handle::Kind::lot_corner) {
    if (has(plan.site.lot, handle.index) && plan.site.lot.size() > 3)
      plan.site.lot.erase(plan.site.lot.begin() + handle.index);
    return plan;
  }
  const auto* points = points_of(plan, handle);
  if (points == nullptr || !has(*points, handle.index)) return plan;
  return reshaped(std::move(plan), handle.feature_id,
                  [&](std::vector<Point>& p) { p.erase(p.begin() + handle.index); });
}

Plan with_entry(Plan plan, Point near) {
  if (!usable(near)) return plan;
  WallPlace best;
  for (const Feature& f : plan.site.features)
    if (f.kind == FeatureKind::house && f.points.size() >= 3) take_nearer(best, f, near);
  if (best.house_id > 0) plan.site.entry = EntryPoint{best.house_id, best.at};
  return plan;
}

Plan without_entry(Plan plan) {
  plan.site.entry.reset();
  return plan;
}

std::optional<Point> handle_position(const Plan& plan, const Handle& handle) {
  switch (handle.kind) {
    case Handle::Kind::lot_corner:
      if (has(plan.site.lot, handle.index)) return plan.site.lot[static_cast<std::size_t>(handle.index)].at;
      break;
    case Handle::Kind::feature_point:
      if (const Feature* f = find_feature(plan.site, handle.feature_id);
          f != nullptr && has(f->points, handle.index))
        return f->points[static_cast<std::size_t>(handle.index)];
      break;
    case Handle::Kind::entry:
      if (plan.site.entry) return plan.site.entry->at;
      break;
    case Handle::Kind::height:
      if (has(plan.site.heights, handle.index))
        return plan.site.heights[static_cast<std::size_t>(handle.index)].at;
      break;
    case Handle::Kind::dimension:
      if (has(plan.dimensions, handle.feature_id)) {
        const Dimension& d = plan.dimensions[static_cast<std::size_t>(handle.feature_id)];
        if (handle.index == 0 || handle.index == 1) return handle.index == 0 ? d.from : d.to;
        if (const auto line = line_of(d); line && handle.index == 2) return 0.5 * (line->a + line->b);
      }
      break;
    case Handle::Kind::locked_point:
      if (has(plan.wishes.locked, handle.feature_id)) {
        const Polyline line = line_of(plan.wishes.locked[static_cast<std::size_t>(handle.feature_id)]);
        if (has(line, handle.index)) return line[static_cast<std::size_t>(handle.index)];
      }
      break;
  }
  return std::nullopt;
}

Plan with_locked(Plan plan, GivenTrench trench) {
  const Polyline line = line_of(trench);
  if (usable(line) && is_line(line)) plan.wishes.locked.push_back(std::move(trench));
  return plan;
}

Plan without_locked(Plan plan, int index) {
  if (has(plan.wishes.locked, index)) plan.wishes.locked.erase(plan.wishes.locked.begin() + index);
  return plan;
}

Plan moved_locked_handle(Plan plan, int index, int point, Point to) {
  return with_locked_line(std::move(plan), index, [&](Polyline& line) {
    if (has(line, point)) line[static_cast<std::size_t>(point)] = to;
  });
}

Plan moved_locked(Plan plan, int index, Point by) {
  return with_locked_line(std::move(plan), index, [by](Polyline& line) {
    for (Point& p : line) p = p + by;
  });
}

Plan with_height(Plan plan, SpotHeight height) {
  if (!usable(height.at) || !(std::abs(height.height) <= kHighest)) return plan;
  auto& heights = plan.site.heights;
  const auto same = std::ranges::find_if(
      heights, [&](const SpotHeight& h) { return distance(h.at, height.at) < kOneHeight; });
  if (same != heights.end())
    *same = height;
  else if (heights.size() < kMostHeights)
    heights.push_back(height);
  return plan;
}

Plan without_height(Plan plan, int index) {
  if (has(plan.site.heights, index)) plan.site.heights.erase(plan.site.heights.begin() + index);
  return plan;
}

Plan with_rule(Plan plan, ClearanceRule rule) {
  if (!usable(rule.trench) || !usable(rule.run) || rule.trench < 0 || rule.run < 0) return plan;
  auto& rules = plan.site.rules;
  std::erase_if(rules, [&](const ClearanceRule& r) { return r.kind == rule.kind; });
  const auto after =
      std::find_if(rules.begin(), rules.end(), [&](const ClearanceRule& r) { return r.kind > rule.kind; });
  rules.insert(after, rule);
  return plan;
}

Plan without_rule(Plan plan, FeatureKind kind) {
  std::erase_if(plan.site.rules, [kind](const ClearanceRule& r) { return r.kind == kind; });
  return plan;
}

Plan with_acceptance(Plan plan, Acceptance acceptance) {
  if (acceptance.finding.empty() || acceptance.reason.empty()) return plan;
  plan = without_acceptance(std::move(plan), acceptance.finding);
  auto& all = plan.accepted;
  const auto after = std::find_if(all.begin(), all.end(),
                                  [&](const Acceptance& a) { return a.finding > acceptance.finding; });
  all.insert(after, std::move(acceptance));
  return plan;
}

Plan without_acceptance(Plan plan, const std::string& finding) {
  std::erase_if(plan.accepted, [&](const Acceptance& a) { return a.finding == finding; });
  return plan;
}

}  // namespace underlawn::edit
