// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/layout.h"

#include <algorithm>
#include <numbers>

#include "base/say.h"
#include "layout/lifted.h"
#include "plan/checks/measure.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

// The layout asks all of these of a place for a trench.
const std::vector<std::string>& placed_from() {
  static const std::vector<std::string> keys = {"layout.circuits_wanted", "site.buildable_area",
                                                "coil.trench_length",     "dig.trench_width",
                                                "layout.spacing",         "layout.end_gap"};
  return keys;
}

void add_counts(Figures& all, const Layout& layout) {
  const auto placed = static_cast<double>(layout.trenches.size());
  const auto supply =
      static_cast<double>(std::count_if(layout.trenches.begin(), layout.trenches.end(),
                                        [](const Trench& t) { return t.role == TrenchRole::supply; }));
  derived(all, "layout.circuits_placed", say("Circuits placed"), placed, Q::count,
          {say("equal trenches placed by the search for the most and shortest"), placed_from(), ""});
  derived(all, "layout.circuits_fit", say("Circuits that would fit"), layout.fits, Q::count,
          {say("most equal trenches found, counted up to three more than wanted"), placed_from(), ""});
  derived(all, "layout.supply_trenches", say("Coils in the supply trench"), supply, Q::count,
          {say("coil trenches that the supply run shares"), {"layout.circuits_placed"}, ""});
  derived(all, "layout.field_trenches", say("Coil trenches in the field"), placed - supply, Q::count,
          {say("circuits placed - coils in the supply trench"),
           {"layout.circuits_placed", "layout.supply_trenches"},
           ""});
}

void add_direction(Figures& all, const Plan& plan, const Layout& layout) {
  if (layout.trenches.empty()) return;
  constexpr double turn = 2 * std::numbers::pi;
  double bearing = std::fmod(plan.site.north - layout.direction, turn);
  if (bearing < 0) bearing += turn;
  derived(all, "layout.direction", say("Direction of the trenches, from the drawing's x axis"),
          layout.direction, Q::angle, {say("best of the directions tried"), {"layout.circuits_placed"}, ""});
  derived(all, "layout.bearing", say("Bearing of the trenches, clockwise from north"), bearing, Q::angle,
          {say("north - direction"), {"site.north", "layout.direction"}, ""});
}

void add_least_spacing(Figures& all, const Layout& layout) {
  double least = std::numeric_limits<double>::infinity();
  const auto& t = layout.trenches;
  for (std::size_t i = 0; i < t.size(); ++i)
    for (std::size_t j = i + 1; j < t.size(); ++j)
      if (const auto beside = gaps_between(t[i], t[j]).beside) least = std::min(least, *beside);
  if (!std::isfinite(least)) return;
  derived(all, "layout.least_spacing", say("Spacing of middle lines, least found"), least, Q::length,
          {say("least distance between the middle lines of two trenches side by side"),
           {"layout.circuits_placed"},
           ""});
}

std::string key_of(const Restriction& r) {
  return r.kind == Restriction::Kind::setback ? "layout.cost.edge." + std::to_string(r.edge + 1)
                                              : "layout.cost.feature." + std::to_string(r.feature_id);
}

void add_costs(Figures& all, const Plan& plan, const Layout& layout) {
  for (const RestrictionCost& cost : layout.costs)
    derived(all, key_of(cost.restriction),
            say("Trenches that {} keeps out",
                name_of(plan.site, cost.restriction, most_lifted(plan.site, cost.restriction))),
            cost.trenches, Q::count,
            {say("trenches that fit without it - trenches that fit"), {"layout.circuits_fit"}, ""});
}

}  // namespace

void add_layout(Figures& all, const Plan& plan, const Outcome& outcome) {
  add_counts(all, outcome.layout);
  add_direction(all, plan, outcome.layout);
  add_least_spacing(all, outcome.layout);
  add_costs(all, plan, outcome.layout);
}

}  // namespace underlawn::figures
