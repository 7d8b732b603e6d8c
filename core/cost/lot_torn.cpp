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

}  // namespace

LotTorn lot_torn(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes) {
  std::vector<Region> cuts, strips;  // of header and run; of everything
  for (std::size_t i = 0; i < std::min(layout.trenches.size(), dig.trenches.size()); ++i) {
    const Trench& t = layout.trenches[i];
    add_strips(strips, middle_line(t),
               strip_width(t.width + 2 * dig.coil_slope * dig.floors[i].deepest, dig.trenches[i]));
  }
  const auto add_conduit = [&](const Polyline& line, double depth, const EarthWork& dug) {
    const double top = wishes.run_width + 2 * dig.run_slope * depth;
    add_strips(cuts, line, top);
    add_strips(strips, line, strip_width(top, dug));
  };
  for (std::size_t i = 0; i < layout.header.legs.size(); ++i)
    add_conduit(layout.header.legs[i], depth_of_leg(layout.header, i, wishes.run_depth), dig.header);
  add_conduit(layout.run.line, layout.run.depth.value_or(wishes.run_depth), dig.run);
  const Region drives = areas_of(site, FeatureKind::drive);
  const Region hard = unite({drives, areas_of(site, FeatureKind::house)});
  Region torn = unite(strips);
  if (site.lot.size() > 2) torn = intersect(torn, region_of(lot_ring(site)));
  return {area(intersect(unite(cuts), drives)), area(subtract(torn, hard))};
}

}  // namespace underlawn
