// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/figures/groups.h"
#include "plane/region.h"
#include "site/clearances.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

std::string corner_key(std::size_t i) {
  return "site.corner." + std::to_string(i + 1);
}

void add_lot(Figures& all, const Site& site) {
  const Ring lot = lot_ring(site);
  typed(all, "site.lot_corners", say("Corners of the lot line, as drawn"), static_cast<double>(lot.size()),
        Q::count);
  std::vector<std::string> corners;
  for (std::size_t i = 0; i < lot.size(); ++i) {
    const std::string number = std::to_string(i + 1), key = corner_key(i);
    typed(all, key + ".x", say("Lot corner {}, x", number), lot[i].x, Q::length);
    typed(all, key + ".y", say("Lot corner {}, y", number), lot[i].y, Q::length);
    corners.push_back(key + ".x");
    corners.push_back(key + ".y");
  }
  derived(all, "site.lot_area", say("Lot area"), area(lot), Q::area,
          {say("half the sum of x(i) y(i+1) - x(i+1) y(i) over the corners"), corners, ""});
}

void add_perimeter(Figures& all, const Site& site) {
  std::vector<std::string> edges;
  for (std::size_t i = 0; i < site.lot.size(); ++i)
    edges.push_back("site.edge." + std::to_string(i + 1) + ".length");
  derived(all, "site.lot_perimeter", say("Lot perimeter"), perimeter(lot_ring(site)), Q::length,
          {say("sum of the lengths of the edges"), std::move(edges), ""});
}

void add_edges(Figures& all, const Site& site, std::vector<std::string>& keeps_out) {
  for (std::size_t i = 0; i < site.lot.size(); ++i) {
    const std::string number = std::to_string(i + 1);
    const std::string key = "site.edge." + number;
    const double length = distance(site.lot[i].at, site.lot[(i + 1) % site.lot.size()].at);
    const std::string from = corner_key(i), to = corner_key((i + 1) % site.lot.size());
    derived(all, key + ".length", say("Lot edge {}, length", number), length, Q::length,
            {say("distance between its corners"), {from + ".x", from + ".y", to + ".x", to + ".y"}, ""});
    typed(all, key + ".setback", say("Lot edge {}, setback", number), site.lot[i].setback, Q::length);
    keeps_out.push_back(key + ".setback");
  }
}

bool has_rule(const Site& site, FeatureKind kind) {
  return std::any_of(site.rules.begin(), site.rules.end(),
                     [kind](const ClearanceRule& r) { return r.kind == kind; });
}

struct Clearance {
  const char* key;    // "trench"
  std::string label;  // "coil trenches"
  double value;
  bool own;  // typed for this very feature
};

void add_clearance(Figures& all, const Site& site, const Feature& f, const Clearance& c) {
  const std::string key = "site.feature." + std::to_string(f.id) + "." + c.key + "_clearance";
  const std::string label = say("{}, clearance of {}", display_name(f), c.label);
  const std::string reason = clearance_reason(site, f);
  if (f.kind == FeatureKind::tree)
    derived(all, key, label, c.value, Q::length,
            {say("the larger of the clearance and the root zone"),
             {"site.feature." + std::to_string(f.id) + ".root_zone"},
             reason});
  else if (c.own || has_rule(site, f.kind))
    typed(all, key, label, c.value, Q::length);
  else
    derived(all, key, label, c.value, Q::length, {say("table, by its kind"), {}, reason});
}

void add_feature(Figures& all, const Site& site, const Feature& f) {
  const std::string key = "site.feature." + std::to_string(f.id);
  if (f.kind == FeatureKind::utility)
    typed(all, key + ".depth", say("{}, depth to its top", display_name(f)), f.depth, Q::length);
  if (f.kind == FeatureKind::tree) {
    typed(all, key + ".trunk_diameter", say("{}, trunk diameter", display_name(f)), f.trunk_diameter,
          Q::diameter);
    derived(all, key + ".root_zone", say("{}, radius of the root zone", display_name(f)),
            root_zone_radius(site, f), Q::length,
            {say("root zone factor x trunk diameter"),
             {"site.root_zone_factor", key + ".trunk_diameter"},
             clearance_reason(site, f)});
  }
  add_clearance(all, site, f,
                {"trench", say("coil trenches"), trench_clearance(site, f), f.trench_clearance.has_value()});
  add_clearance(all, site, f,
                {"run", say("header and run"), run_clearance(site, f), f.run_clearance.has_value()});
}

}  // namespace

void add_site(Figures& all, const Plan& plan, const Outcome& outcome) {
  const Site& site = plan.site;
  std::vector<std::string> trench_out = {"site.lot_area"};
  add_lot(all, site);
  typed(all, "site.north", say("North, from the drawing's x axis"), site.north, Q::angle);
  typed(all, "site.features", say("Things drawn on the lot"), static_cast<double>(site.features.size()),
        Q::count);
  typed(all, "site.root_zone_factor", say("Root zone radius per trunk diameter"), site.root_zone_factor,
        Q::count);
  add_edges(all, site, trench_out);
  add_perimeter(all, site);
  std::vector<std::string> run_out = trench_out;
  for (const Feature& f : site.features) {
    add_feature(all, site, f);
    trench_out.push_back("site.feature." + std::to_string(f.id) + ".trench_clearance");
    if (!crossable(f)) run_out.push_back("site.feature." + std::to_string(f.id) + ".run_clearance");
  }
  derived(all, "site.buildable_area", say("Buildable area, for coil trenches"),
          area(outcome.layout.buildable), Q::area,
          {say("lot less setbacks less clearances, offset and clipped on a grid of 0.01 mm, never too large"),
           trench_out, ""});
  derived(
      all, "site.routable_area", say("Area open to header and run"), area(outcome.layout.routable), Q::area,
      {say("lot less setbacks less the clearances of what they may not cross, offset and clipped on a grid "
           "of 0.01 mm"),
       run_out, ""});
}

}  // namespace underlawn::figures
