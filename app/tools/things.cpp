// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/things.h"

#include <algorithm>

#include "layout/given.h"

namespace underlawn {

using Kind = Selected::Kind;

edit::Things things_of(const Plan& plan, const std::vector<Selected>& what) {
  edit::Things things;
  for (const Selected& s : what) {
    if (!is_there(plan, s)) continue;
    if (s.kind == Kind::feature) things.features.push_back(s.id);
    if (s.kind == Kind::locked) things.locked.push_back(s.id);
    if (s.kind == Kind::dimension) things.dimensions.push_back(s.id);
    if (s.kind == Kind::height) things.heights.push_back(s.id);
    if (s.kind == Kind::lot || s.kind == Kind::lot_edge) things.lot = true;
  }
  return things;
}

std::vector<Selected> selected_of(const edit::Things& things) {
  std::vector<Selected> all;
  if (things.lot) all.push_back({Kind::lot});
  for (int id : things.features) all.push_back({Kind::feature, id});
  for (int i : things.locked) all.push_back({Kind::locked, i});
  for (int i : things.dimensions) all.push_back({Kind::dimension, i});
  for (int i : things.heights) all.push_back({Kind::height, i});
  return all;
}

bool empty(const edit::Things& t) {
  return t.features.empty() && t.locked.empty() && t.dimensions.empty() && t.heights.empty() && !t.lot;
}

std::vector<Point> points_of(const Plan& plan, const edit::Things& things) {
  std::vector<Point> all;
  const auto add = [&](const std::vector<Point>& points) {
    all.insert(all.end(), points.begin(), points.end());
  };
  if (things.lot) add(lot_ring(plan.site));
  for (int id : things.features)
    if (const Feature* f = find_feature(plan.site, id)) add(f->points);
  for (int i : things.locked) add(line_of(plan.wishes.locked[static_cast<std::size_t>(i)]));
  for (int i : things.dimensions) {
    const Dimension& d = plan.dimensions[static_cast<std::size_t>(i)];
    add({d.from, d.to});
  }
  for (int i : things.heights) all.push_back(plan.site.heights[static_cast<std::size_t>(i)].at);
  return all;
}

std::optional<Box> box_of(const std::vector<Point>& points) {
  if (points.empty()) return std::nullopt;
  Box box{points.front(), points.front()};
  for (Point p : points)
    box = {{std::min(box.low.x, p.x), std::min(box.low.y, p.y)},
           {std::max(box.high.x, p.x), std::max(box.high.y, p.y)}};
  return box;
}

}  // namespace underlawn
