// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "layout/lifted.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

std::string advice(const Site& site, const Layout& layout) {
  const std::string ways = say("Ask for a shorter trench, a closer spacing or fewer circuits.");
  if (layout.trenches.empty() && layout.costs.empty()) return ways;
  if (layout.costs.empty() || layout.costs.front().trenches <= 0)
    return say(
        "No one setback or clearance alone was found to keep another trench out: several do together. {}",
        ways);
  const RestrictionCost& dearest = layout.costs.front();
  const std::string how_many = dearest.trenches == 1
                                   ? say("1 more trench would fit")
                                   : say("{} more trenches would fit", std::to_string(dearest.trenches));
  return say("Dearest is {}: without it {}. {}",
             name_of(site, dearest.restriction, most_lifted(site, dearest.restriction)), how_many, ways);
}

std::vector<Polyline> places(const Site& site, const Layout& layout) {
  if (layout.costs.empty()) return {};
  const Restriction& r = layout.costs.front().restriction;
  if (r.kind == Restriction::Kind::setback) {
    if (r.edge < 0 || static_cast<std::size_t>(r.edge) >= site.lot.size()) return {};
    return {lot_edge(site, static_cast<std::size_t>(r.edge))};
  }
  const Feature* f = find_feature(site, r.feature_id);
  return f != nullptr ? std::vector<Polyline>{drawn(*f)} : std::vector<Polyline>{};
}

// There is room for more; the mix of prices says not to.
bool left_out(const Plan& plan, const Layout& layout) {
  return plan.wishes.aim == Aim::mix && static_cast<int>(layout.trenches.size()) < layout.fits;
}

}  // namespace

std::vector<Finding> circuits_missing(const Plan& plan, const Outcome& outcome) {
  const auto placed = static_cast<int>(outcome.layout.trenches.size());
  const int wanted = plan.wishes.circuits;
  if (plan.site.lot.empty() || placed >= wanted) return {};
  Finding f = make_finding("circuits_missing", "", Severity::error,
                           say("Only {} of {} circuits fit", std::to_string(placed), std::to_string(wanted)));
  if (placed == 0) f.title = say("No trench fits");
  if (left_out(plan, outcome.layout)) {
    f.severity = Severity::hint;
    f.title =
        say("{} of {} circuits are laid: by the plan's prices the others cost more than they are missed",
            std::to_string(placed), std::to_string(wanted));
    f.advice = say("Ask for another aim, or a higher price of a missing circuit, to have them laid.");
    set_measure(f, placed, wanted, Quantity::count);
    f.source = say("prices of the plan");
    return {f};
  }
  set_measure(f, placed, wanted, Quantity::count);
  f.advice = advice(plan.site, outcome.layout);
  f.source = say("circuits asked for in the plan");
  f.places = places(plan.site, outcome.layout);
  return {f};
}

}  // namespace underlawn::checks
