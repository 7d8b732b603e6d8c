// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/ground_used.h"

#include <algorithm>

#include "dig/machine_ways.h"
#include "layout/amounts.h"
#include "plane/strip.h"
#include "plane/subtract_all.h"

namespace underlawn {

namespace {

bool no_lawn(FeatureKind kind) {
  return kind == FeatureKind::house || kind == FeatureKind::drive || kind == FeatureKind::no_dig;
}

}  // namespace

void add_track(std::vector<Region>& all, const Polyline& way, double width) {
  if (!way.empty()) all.push_back(buffered(way, width / 2));
}

void add_ground_of(const DigStep& step, const Machine& excavator, std::vector<Region>& all) {
  if (step.line.size() > 1)
    all.push_back(region_of(strip_along(step.line, std::max(torn_width(step.width, step.depth), step.top))));
  for (const Ring& heap : step.spoil)
    if (heap.size() > 2) all.push_back(region_of(heap));
  add_track(all, step.line, excavator.width);
}

void add_laydown(const DigOrder& order, std::vector<Region>& all) {
  if (order.laydown && order.laydown_radius > 0)
    all.push_back(buffered(*order.laydown, order.laydown_radius));
}

Region of_the_lawn(const Site& site, const std::vector<Region>& parts) {
  Region all = unite(parts);
  if (site.lot.size() > 2) all = intersect(all, region_of(lot_ring(site)));
  std::vector<Region> other;
  for (const Feature& f : site.features)
    if (no_lawn(f.kind) && f.points.size() > 2) other.push_back(region_of(f.points));
  return subtract_all(all, other);
}

Region ground_used(const Site& site, const DigOrder& order, const Machine& excavator) {
  std::vector<Region> taken;
  for (const DigStep& step : order.steps) add_ground_of(step, excavator, taken);
  for (const Drive& drive : drives_of(order, excavator)) add_track(taken, *drive.way, drive.width);
  add_laydown(order, taken);
  return of_the_lawn(site, taken);
}

}  // namespace underlawn
