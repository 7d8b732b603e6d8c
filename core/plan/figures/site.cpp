// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/figures/groups.h"
#include "plane/region.h"
#include "site/clearances.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

void add_lot(Figures& all, const Site& site) {
  const Ring lot = lot_ring(site);
  typed(all, "site.lot_corners", "Corners of the lot line, as drawn", static_cast<double>(lot.size()),
        Q::count);
  derived(all, "site.lot_area", "Lot area", area(lot), Q::area,
          {"half the sum of x(i) y(i+1) - x(i+1) y(i) over the corners", {"site.lot_corners"}, ""});
  derived(all, "site.lot_perimeter", "Lot perimeter", perimeter(lot), Q::length,
          {"sum of the lengths of the edges", {"site.lot_corners"}, ""});
}

void add_edges(Figures& all, const Site& site, std::vector<std::string>& keeps_out) {
  for (std::size_t i = 0; i < site.lot.size(); ++i) {
    const std::string number = std::to_string(i + 1);
    const std::string key = "site.edge." + number;
    const double length = distance(site.lot[i].at, site.lot[(i + 1) % site.lot.size()].at);
    derived(all, key + ".length", "Lot edge " + number + ", length", length, Q::length,
            {"distance between its corners", {"site.lot_corners"}, ""});
    typed(all, key + ".setback", "Lot edge " + number + ", setback", site.lot[i].setback, Q::length);
    keeps_out.push_back(key + ".setback");
  }
}

void add_clearance(Figures& all, const Site& site, const Feature& f, const char* what, double value, bool own,
                   std::vector<std::string> from) {
  const std::string key = "site.feature." + std::to_string(f.id) + "." + what + "_clearance";
  const std::string label =
      display_name(f) + ", clearance of " + (what == std::string("run") ? "header and run" : "coil trenches");
  if (own && from.empty()) return typed(all, key, label, value, Q::length);
  derived(all, key, label, value, Q::length,
          {f.kind == FeatureKind::tree ? "the larger of the clearance and the root zone"
                                       : "clearance in force for its kind",
           std::move(from), clearance_reason(site, f)});
}

void add_feature(Figures& all, const Site& site, const Feature& f) {
  const std::string key = "site.feature." + std::to_string(f.id);
  std::vector<std::string> from;
  if (f.kind == FeatureKind::utility)
    typed(all, key + ".depth", display_name(f) + ", depth to its top", f.depth, Q::length);
  if (f.kind == FeatureKind::tree) {
    typed(all, key + ".trunk_diameter", display_name(f) + ", trunk diameter", f.trunk_diameter, Q::diameter);
    derived(all, key + ".root_zone", display_name(f) + ", radius of the root zone", root_zone_radius(site, f),
            Q::length,
            {"root zone factor x trunk diameter",
             {"site.root_zone_factor", key + ".trunk_diameter"},
             clearance_reason(site, f)});
    from.push_back(key + ".root_zone");
  }
  add_clearance(all, site, f, "trench", trench_clearance(site, f), f.trench_clearance.has_value(), from);
  add_clearance(all, site, f, "run", run_clearance(site, f), f.run_clearance.has_value(), from);
}

}  // namespace

void add_site(Figures& all, const Plan& plan, const Outcome& outcome) {
  const Site& site = plan.site;
  std::vector<std::string> trench_out = {"site.lot_area"};
  add_lot(all, site);
  typed(all, "site.north", "North, from the drawing's x axis", site.north, Q::angle);
  typed(all, "site.features", "Things drawn on the lot", static_cast<double>(site.features.size()), Q::count);
  typed(all, "site.root_zone_factor", "Root zone radius per trunk diameter", site.root_zone_factor, Q::count);
  add_edges(all, site, trench_out);
  std::vector<std::string> run_out = {"site.lot_area"};
  for (const Feature& f : site.features) {
    add_feature(all, site, f);
    trench_out.push_back("site.feature." + std::to_string(f.id) + ".trench_clearance");
    run_out.push_back("site.feature." + std::to_string(f.id) + ".run_clearance");
  }
  derived(all, "site.buildable_area", "Buildable area, for coil trenches", area(outcome.layout.buildable),
          Q::area,
          {"lot less setbacks less clearances, offset and clipped on a grid of 0.01 mm, never too large",
           trench_out, ""});
  derived(all, "site.routable_area", "Area open to header and run", area(outcome.layout.routable), Q::area,
          {"lot less the clearances of what they may not cross, offset and clipped on a grid of 0.01 mm",
           run_out, ""});
}

}  // namespace underlawn::figures
