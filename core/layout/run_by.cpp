// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/run_by.h"

#include "layout/fewer_bends.h"
#include "layout/legality.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

// What the middle of a run may not come to lie on, at this place.
std::string what_lies_at(const Site& site, const Wishes& w, Point p) {
  std::string names;
  const auto add = [&](const std::string& name) { names += (names.empty() ? "" : ", ") + name; };
  const Ring lot = lot_ring(site);
  if (!contains(lot, p)) add("outside the lot");
  for (std::size_t i = 0; i < lot.size(); ++i)
    if (distance(Segment{lot[i], lot[(i + 1) % lot.size()]}, p) < site.lot[i].setback + w.run_width / 2)
      add("the setback of lot edge " + std::to_string(i + 1));
  for (const Feature& f : site.features) {
    if (crossable(f)) continue;
    const double away = shape_of(f.kind) == FeatureShape::area ? distance(f.points, p)
                        : f.points.size() == 1                 ? distance(f.points.front(), p)
                                                               : line_distance({p, p}, f.points);
    if (away < run_clearance(site, f) + w.run_width / 2) add(display_name(f));
  }
  return names;
}

Trouble no_way_to(std::size_t place, const std::string& in_way) {
  return {"run_by_not_reached", "place " + std::to_string(place + 1) + " that the run passes",
          in_way.empty() ? "shut in" : "in the way: " + in_way, "open ground with a way to it",
          "Move this place, or take it out."};
}

}  // namespace

Result<Polyline> run_by_places(const Site& site, const Wishes& w, const Conduits& c) {
  for (std::size_t i = 0; i < w.run_by.size(); ++i)
    if (!contains(c.free, w.run_by[i])) return refuse(no_way_to(i, what_lies_at(site, w, w.run_by[i])));
  Router router(c.free, c.dear, kBend);
  std::size_t farthest = 0;
  for (const Polyline& stub : c.stubs) {
    Polyline line = stub;
    std::size_t i = 0;
    for (; i < w.run_by.size(); ++i) {
      if (distance(line.back(), w.run_by[i]) < kSamePlace) continue;
      const auto route = router.route(line.back(), w.run_by[i]);
      if (!route) break;
      const Polyline leg = with_fewer_bends(route->line, router.free());
      line.insert(line.end(), leg.begin() + 1, leg.end());
    }
    if (i == w.run_by.size()) return line;
    farthest = std::max(farthest, i);
  }
  return refuse(no_way_to(farthest, ""));
}

}  // namespace underlawn
