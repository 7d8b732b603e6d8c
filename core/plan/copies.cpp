// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/copies.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "plan/edits.h"
#include "plane/region.h"

namespace underlawn::edit {

namespace {

bool usable(Point p) {
  return std::isfinite(p.x) && std::isfinite(p.y) && std::abs(p.x) <= kLargestPlan &&
         std::abs(p.y) <= kLargestPlan;
}

template <class T>
bool has(const std::vector<T>& all, int i) {
  return i >= 0 && static_cast<std::size_t>(i) < all.size();
}

template <class T>
void take(std::vector<T>& out, const std::vector<T>& all, const std::vector<int>& which) {
  for (int i : which)
    if (has(all, i)) out.push_back(all[static_cast<std::size_t>(i)]);
}

template <class Change>
GivenTrench changed(GivenTrench t, Change change) {
  t.head = change(t.head);
  t.end = change(t.end);
  for (Point& p : t.bends) p = change(p);
  return t;
}

template <class Change>
Dimension changed(Dimension d, Change change) {
  d.from = change(d.from);
  d.to = change(d.to);
  return d;
}

// Heights nearer than kOneHeight are one; sought by cells, for there may be thousands.
void add_heights(std::vector<SpotHeight>& all, const std::vector<SpotHeight>& more, Point by) {
  std::map<std::pair<long, long>, std::vector<Point>> cells;
  const auto cell = [](Point p) {
    return std::pair(std::lround(p.x / (2 * kOneHeight)), std::lround(p.y / (2 * kOneHeight)));
  };
  if (!more.empty())
    for (const SpotHeight& h : all) cells[cell(h.at)].push_back(h.at);
  const auto taken = [&](Point p) {
    const auto [x, y] = cell(p);
    for (long i = x - 1; i <= x + 1; ++i)
      for (long j = y - 1; j <= y + 1; ++j)
        if (const auto at = cells.find({i, j}); at != cells.end())
          for (Point q : at->second)
            if (distance(p, q) < kOneHeight) return true;
    return false;
  };
  for (SpotHeight h : more) {
    h.at = h.at + by;
    if (all.size() >= kMostHeights || !usable(h.at) || taken(h.at)) continue;
    cells[cell(h.at)].push_back(h.at);
    all.push_back(h);
  }
}

std::vector<int> rising(std::size_t from, std::size_t to) {
  std::vector<int> all;
  for (std::size_t i = from; i < to; ++i) all.push_back(static_cast<int>(i));
  return all;
}

}  // namespace

Plan taken_out(const Plan& plan, const Things& things) {
  Plan out;
  out.units = plan.units;
  for (int id : things.features)
    if (const Feature* f = find_feature(plan.site, id)) out = with_feature(std::move(out), *f);
  take(out.wishes.locked, plan.wishes.locked, things.locked);
  take(out.dimensions, plan.dimensions, things.dimensions);
  take(out.site.heights, plan.site.heights, things.heights);
  return out;
}

Plan with_added(Plan plan, const Plan& other, Point by) {
  const auto move = [by](Point p) { return p + by; };
  for (Feature f : other.site.features) {
    for (Point& p : f.points) p = move(p);
    f.id = next_feature_id(plan);
    plan = with_feature(std::move(plan), std::move(f));
  }
  for (const GivenTrench& t : other.wishes.locked) plan = with_locked(std::move(plan), changed(t, move));
  for (const Dimension& d : other.dimensions) {
    const Dimension moved = changed(d, move);
    const bool room = plan.dimensions.size() < static_cast<std::size_t>(kMostDimensions);
    if (room && usable(moved.from) && usable(moved.to)) plan.dimensions.push_back(moved);
  }
  add_heights(plan.site.heights, other.site.heights, by);
  return plan;
}

Things added(const Plan& before, const Plan& after) {
  Things things;
  for (const Feature& f : after.site.features)
    if (find_feature(before.site, f.id) == nullptr) things.features.push_back(f.id);
  things.locked = rising(before.wishes.locked.size(), after.wishes.locked.size());
  things.dimensions = rising(before.dimensions.size(), after.dimensions.size());
  things.heights = rising(before.site.heights.size(), after.site.heights.size());
  return things;
}

Plan turned(Plan plan, const Things& things, double radians, Point about) {
  if (!usable(about) || !std::isfinite(radians)) return plan;
  const Plan before = plan;
  const auto turn = [&](Point p) { return about + rotated(p - about, radians); };
  bool beyond = false;
  const auto checked = [&](Point p) {
    beyond = beyond || !usable(turn(p));
    return turn(p);
  };
  for (int id : things.features) plan = rotated_feature(std::move(plan), id, radians, about);
  for (int i : things.locked)
    if (has(plan.wishes.locked, i)) {
      GivenTrench& t = plan.wishes.locked[static_cast<std::size_t>(i)];
      t = changed(t, checked);
    }
  for (int i : things.dimensions)
    if (has(plan.dimensions, i)) {
      Dimension& d = plan.dimensions[static_cast<std::size_t>(i)];
      d = changed(d, checked);
    }
  for (int i : things.heights)
    if (has(plan.site.heights, i)) {
      SpotHeight& h = plan.site.heights[static_cast<std::size_t>(i)];
      h.at = checked(h.at);
    }
  if (things.lot)
    for (LotCorner& c : plan.site.lot) c.at = checked(c.at);
  return beyond ? before : plan;
}

}  // namespace underlawn::edit
