// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/amounts.h"

#include <cmath>

#include "layout/quick_distance.h"

namespace underlawn {

namespace {

// A line of trench with its widths.
struct Strip {
  Polyline line;
  double width, torn;
};

std::vector<Strip> strips_of(const Wishes& w, const Layout& l) {
  std::vector<Strip> strips;
  for (const Trench& t : l.trenches)
    strips.push_back({middle_line(t), t.width, torn_width(t.width, t.depth)});
  const double torn = torn_width(w.run_width, w.run_depth);
  if (l.run.line.size() > 1) strips.push_back({l.run.line, w.run_width, torn});
  for (const Polyline& leg : l.header.legs) strips.push_back({leg, w.run_width, torn});
  return strips;
}

Region ground_under(const Polyline& line, double width) {
  std::vector<Region> legs;
  for (std::size_t i = 1; i < line.size(); ++i)
    if (distance(line[i - 1], line[i]) > kSamePlace)
      legs.push_back(region_of(rectangle_along({line[i - 1], line[i]}, width)));
  return unite(legs);
}

double lawn_of(const Site& site, const std::vector<Strip>& strips) {
  std::vector<Region> torn, covered;
  for (const Strip& s : strips) torn.push_back(ground_under(s.line, s.torn));
  for (const Feature& f : site.features)
    if (f.kind == FeatureKind::drive || f.kind == FeatureKind::house) covered.push_back(region_of(f.points));
  Region all = unite(torn);
  if (site.lot.size() > 2) all = intersect(all, region_of(lot_ring(site)));
  return area(subtract(all, unite(covered)));
}

double pavement_of(const Site& site, const Wishes& w, const Layout& l) {
  std::vector<Region> cut, drives;
  for (const Feature& f : site.features)
    if (f.kind == FeatureKind::drive) drives.push_back(region_of(f.points));
  if (drives.empty()) return 0;
  if (l.run.line.size() > 1) cut.push_back(ground_under(l.run.line, w.run_width));
  for (const Polyline& leg : l.header.legs) cut.push_back(ground_under(leg, w.run_width));
  return area(intersect(unite(cut), unite(drives)));
}

double floor_to(Point trunk, const Strip& s) {
  double least = 1e300;
  for (std::size_t i = 1; i < s.line.size(); ++i) {
    const Segment leg{s.line[i - 1], s.line[i]};
    if (distance(leg.a, leg.b) < kSamePlace) continue;
    const Ring floor = rectangle_along(leg, s.width);
    if (quick_inside(floor, trunk)) return 0;
    const Segment way = quick_way(floor, {trunk, trunk});
    least = std::min(least, distance(way.a, way.b));
  }
  return least;
}

std::vector<TreeDistance> trees_of(const Site& site, const std::vector<Strip>& strips) {
  std::vector<TreeDistance> trees;
  for (const Feature& f : site.features) {
    if (f.kind != FeatureKind::tree || f.points.empty() || strips.empty()) continue;
    TreeDistance d{f.id, 1e300};
    for (const Strip& s : strips) d.nearest = std::min(d.nearest, floor_to(f.points.front(), s));
    trees.push_back(d);
  }
  std::stable_sort(trees.begin(), trees.end(),
                   [](const TreeDistance& l, const TreeDistance& r) { return l.nearest < r.nearest; });
  return trees;
}

void add_trenches(Amounts& a, const Wishes& w, const Layout& l, const Terrain& terrain) {
  double shared = 0;
  for (const Trench& t : l.trenches) {
    const double long_ = length_of(t);
    a.trench += long_;
    a.dug += long_ * t.width * t.depth;
    if (w.level_floor) a.dug += dug_for_level_floor(terrain, middle_line(t), t.width);
    a.bedding += long_ * t.width * w.bedding;
    a.coil_pipe += t.coil.coil_length;
    if (t.role != TrenchRole::supply) continue;
    shared += long_;
    a.bedding += long_ * t.width * w.bedding;  // round the run's pipes, over the coil
  }
  a.header = l.header.length;
  a.run = std::max(0.0, l.run.length - shared);
  a.dug += (a.header + a.run) * w.run_width * w.run_depth;
  a.bedding += (a.header + a.run) * w.run_width * w.bedding;
  a.header_pipe = 2 * (l.header.length + l.run.length);
}

}  // namespace

double torn_width(double width, double depth) {
  const double heap = kSpoilSwell * width * depth;
  return width + kSpoilOff + 2 * std::sqrt(kSpoilSlope * std::max(0.0, heap)) + kWorkRoom;
}

double dug_for_level_floor(const Terrain& terrain, const Polyline& line, double width) {
  if (!terrain.is_known()) return 0;
  const GroundLine ground = terrain.along(line);
  return ground.length * width * (ground.mean - ground.lowest);
}

Amounts amounts_of(const Site& site, const Wishes& wishes, const Layout& layout) {
  return amounts_of(site, wishes, layout, wishes.level_floor ? Terrain(site.heights) : Terrain());
}

Amounts amounts_of(const Site& site, const Wishes& wishes, const Layout& layout, const Terrain& terrain) {
  Amounts a;
  add_trenches(a, wishes, layout, terrain);
  const std::vector<Strip> strips = strips_of(wishes, layout);
  a.lawn = lawn_of(site, strips);
  a.pavement = pavement_of(site, wishes, layout);
  a.joints = joints_of(layout);
  for (const Crossing& c : layout.crossings) {
    const Feature* f = find_feature(site, c.feature_id);
    a.hand_crossings += f != nullptr && f->kind == FeatureKind::utility;
  }
  a.trees = trees_of(site, strips);
  return a;
}

int joints_of(const Layout& layout) {
  return 8 * static_cast<int>(layout.trenches.size());
}

double money_of(const Amounts& a, const Prices& p) {
  return p.digging * a.dug + p.hand_crossing * a.hand_crossings + p.pavement * a.pavement + p.lawn * a.lawn +
         p.bedding * a.bedding + p.coil_pipe * a.coil_pipe + p.header_pipe * a.header_pipe +
         p.joint * a.joints;
}

double regret_of(const Amounts& a, const Prices& p, int missing_circuits) {
  double sum = p.missing_circuit * std::max(0, missing_circuits);
  for (const TreeDistance& t : a.trees) sum += p.near_tree * std::max(0.0, p.tree_distance - t.nearest);
  return sum;
}

double money_of_run_metre(const Wishes& w) {
  const Prices& p = w.prices;
  return p.digging * w.run_width * w.run_depth + p.bedding * w.run_width * w.bedding +
         p.lawn * torn_width(w.run_width, w.run_depth) + 2 * p.header_pipe;
}

}  // namespace underlawn
