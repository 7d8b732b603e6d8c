// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/lot_torn.h"

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

}  // namespace

LotTorn lot_torn(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes,
                 const Ground& ground, bool sloped) {
  const double slope = sloped ? 2 * dig.slope : 0;
  std::vector<Region> cuts, strips;  // of header and run; of everything
  const auto strip = [&](const Polyline& line, double top, const EarthWork& work) {
    add_strips(strips, line, top + kSpoilEdge + spoil_heap(work.loose, work.length, ground.repose).width);
  };
  const auto& works = sloped ? dig.trenches_sloped : dig.trenches_vertical;
  for (std::size_t i = 0; i < layout.trenches.size() && i < works.size(); ++i) {
    const Trench& t = layout.trenches[i];
    strip(middle_line(t), t.width + slope * t.depth, works[i]);
  }
  const double top = wishes.run_width + slope * wishes.run_depth;
  const auto conduit = [&](const Polyline& line, const EarthWork& work) {
    add_strips(cuts, line, top);
    strip(line, top, work);
  };
  for (const Polyline& leg : layout.header.legs)
    conduit(leg, sloped ? dig.header_sloped : dig.header_vertical);
  conduit(layout.run.line, sloped ? dig.run_sloped : dig.run_vertical);
  const Region drives = areas_of(site, FeatureKind::drive);
  const Region hard = unite({drives, areas_of(site, FeatureKind::house)});
  return {area(intersect(unite(cuts), drives)), area(subtract(unite(strips), hard))};
}

}  // namespace underlawn
