// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/lot_torn.h"

#include <algorithm>
#include <cmath>

#include "plane/region.h"

namespace underlawn {

namespace {

void add_strips(std::vector<Region>& strips, const Polyline& line, double width) {
  for (std::size_t i = 1; i < line.size(); ++i)
    if (distance(line[i - 1], line[i]) > kSamePlace)
      strips.push_back(region_of(rectangle_along({line[i - 1], line[i]}, width)));
}

Region areas_of(const Site& site, FeatureKind kind) {
  std::vector<Region> areas;
  for (const Feature& f : site.features)
    if (f.kind == kind && f.points.size() > 2) areas.push_back(region_of(f.points));
  return unite(areas);
}

// m across, from edge to edge, of a trench that is `top` wide at the ground, with the heap of what is dug in
// it.
double strip_width(double top, const EarthWork& dug) {
  const double section = dug.length > 0 ? dug.bank / dug.length : 0;
  return top + kSpoilOff + 2 * std::sqrt(kSpoilSlope * kSpoilSwell * section) + kWorkRoom;
}

// Of every leg of header and run its line, its width at the ground and what is dug.
template <class Visit>
void each_conduit(const Layout& layout, const DigPlan& dig, const Wishes& wishes, Visit visit) {
  const auto top = [&](double depth) { return wishes.run_width + 2 * dig.run_slope * depth; };
  for (std::size_t i = 0; i < layout.header.legs.size(); ++i)
    visit(layout.header.legs[i], top(depth_of_leg(layout.header, i, wishes.run_depth)), dig.header);
  visit(layout.run.line, top(layout.run.depth.value_or(wishes.run_depth)), dig.run);
}

}  // namespace

double pavement_cut(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes) {
  std::vector<Region> cuts;
  each_conduit(layout, dig, wishes,
               [&](const Polyline& line, double top, const EarthWork&) { add_strips(cuts, line, top); });
  return area(intersect(unite(cuts), areas_of(site, FeatureKind::drive)));
}

double lawn_in_strips(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes) {
  std::vector<Region> strips;
  for (std::size_t i = 0; i < std::min(layout.trenches.size(), dig.trenches.size()); ++i) {
    const Trench& t = layout.trenches[i];
    add_strips(strips, middle_line(t),
               strip_width(t.width + 2 * dig.coil_slope * dig.floors[i].deepest, dig.trenches[i]));
  }
  each_conduit(layout, dig, wishes, [&](const Polyline& line, double top, const EarthWork& dug) {
    add_strips(strips, line, strip_width(top, dug));
  });
  Region torn = unite(strips);
  if (site.lot.size() > 2) torn = intersect(torn, region_of(lot_ring(site)));
  const Region hard = unite({areas_of(site, FeatureKind::drive), areas_of(site, FeatureKind::house)});
  return area(subtract(torn, hard));
}

}  // namespace underlawn
