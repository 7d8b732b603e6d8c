// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/lot_torn.h"

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

// m across, from edge to edge, of a trench of this section.
double strip_width(double floor, double depth, double slope) {
  const double section = depth * (floor + slope * depth);
  return floor + 2 * slope * depth + kSpoilOff + 2 * std::sqrt(kSpoilSlope * kSpoilSwell * section) +
         kWorkRoom;
}

}  // namespace

LotTorn lot_torn(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes) {
  std::vector<Region> cuts, strips;  // of header and run; of everything
  for (const Trench& t : layout.trenches)
    add_strips(strips, middle_line(t), strip_width(t.width, t.depth, dig.coil_slope));
  std::vector<Polyline> conduits = layout.header.legs;
  conduits.push_back(layout.run.line);
  for (const Polyline& line : conduits) {
    add_strips(cuts, line, wishes.run_width + 2 * dig.run_slope * wishes.run_depth);
    add_strips(strips, line, strip_width(wishes.run_width, wishes.run_depth, dig.run_slope));
  }
  const Region drives = areas_of(site, FeatureKind::drive);
  const Region hard = unite({drives, areas_of(site, FeatureKind::house)});
  Region torn = unite(strips);
  if (site.lot.size() > 2) torn = intersect(torn, region_of(lot_ring(site)));
  return {area(intersect(unite(cuts), drives)), area(subtract(torn, hard))};
}

}  // namespace underlawn
