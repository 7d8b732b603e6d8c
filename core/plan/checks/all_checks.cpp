// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "plan/checks/check.h"
#include "plan/checks/price_rules.h"
#include "plan/checks/rules.h"

namespace underlawn {

namespace {

// Errors first, then warnings, then hints; within one severity by key.
bool before(const Finding& a, const Finding& b) {
  if (a.severity != b.severity) return a.severity > b.severity;
  return a.key < b.key;
}

void mark_accepted(std::vector<Finding>& findings, const std::vector<Acceptance>& accepted) {
  for (Finding& f : findings)
    for (const Acceptance& a : accepted)
      if (a.finding == f.key && !a.reason.empty()) {
        f.accepted = true;
        f.reason = a.reason;
      }
}

}  // namespace

const std::vector<CheckEntry>& all_checks() {
  static const std::vector<CheckEntry> checks = {
      {"trench_outside_lot", mark("Coil trenches stay inside the lot line."), checks::trench_outside_lot},
      {"trench_in_setback", mark("Coil trenches keep each lot edge's setback."), checks::trench_in_setback},
      {"trench_in_clearance", mark("Coil trenches keep the clearance of everything on the lot."),
       checks::trench_in_clearance},
      {"trench_spacing", mark("Coil trenches keep the spacing asked for."), checks::trench_spacing},
      {"circuits_missing", mark("As many circuits are placed as were asked for."), checks::circuits_missing},
      {"no_entry_or_no_way", mark("There is an entry point and a way to it from every trench."),
       checks::no_entry_or_no_way},
      {"run_outside_lot", mark("Header and supply run stay inside the lot line."), checks::run_outside_lot},
      {"run_in_setback", mark("Header and supply run keep each lot edge's setback."), checks::run_in_setback},
      {"header_run_clearance", mark("Header and supply run keep the clearance of what they may not cross."),
       checks::header_run_clearance},
      {"run_in_root_zone", mark("Header and supply run stay out of root zones."), checks::run_in_root_zone},
      {"run_through_trench", mark("Header and supply run cross no coil."), checks::run_through_trench},
      {"conduits_cross", mark("Header and supply run do not cross each other."), checks::conduits_cross},
      {"easement_crossed", mark("Digging in an easement needs its holder's consent."),
       checks::easement_crossed},
      {"pavement_cut", mark("Pavement that is cut has to be restored."), checks::pavement_cut},
      {"utility_crossing", mark("Digging near a utility is done by hand."), checks::utility_crossing},
      {"utility_depth_conflict", mark("The loop's pipes pass well above or below a utility they cross."),
       checks::utility_depth_conflict},
      {"utility_through", mark("No utility is drawn through a tank, a well or a house."),
       checks::utility_through},
      {"trench_depth_protection", mark("Deep trenches need a protective system, very deep ones an engineer."),
       checks::trench_depth_protection},
      {"depth_against_frost", mark("Pipes lie below the frost line."), checks::depth_against_frost},
      {"spoil_room", mark("Spoil has room beside its trench."), checks::spoil_room},
      {"sloped_top_overlap", mark("Sloped sides stay off one another, the lot line and houses."),
       checks::sloped_top_overlap},
      {"spoil_over_undug", mark("No spoil falls on a trench that is still to be dug, on header or run."),
       checks::spoil_over_undug},
      {"spoil_lies_on", mark("Spoil lies off roots, house walls and buried lines."), checks::spoil_lies_on},
      {"way_over_utility", mark("Machines drive over no buried line unasked."), checks::way_over_utility},
      {"way_over_roots", mark("Machines and trucks drive over no roots of trees."), checks::way_over_roots},
      {"way_tight", mark("Machines and trucks keep off walls, septic tanks and drain fields."),
       checks::way_tight},
      {"filled_before_test", mark("Coil trenches stay open until the loop is tested."),
       checks::filled_before_test},
      {"first_days_differ", mark("Crew and family are told the same first day."), checks::first_days_differ},
      {"machine_reach", mark("The machine comes to every trench, digs as deep and casts as far."),
       checks::machine_reach},
      {"sides_chosen", mark("Sides stand as the soil class asks, spoil off the edge."), checks::sides_chosen},
      {"bend_too_tight", mark("Loops do not bend the pipe tighter than it bears."), checks::bend_too_tight},
      {"coil_wider_than_trench",
       mark("The coil fits on the trench floor; loops are measured along the pipe's middle."),
       checks::coil_wider_than_trench},
      {"coil_pitch_range", mark("Loops overlap, but not too tight."), checks::coil_pitch_range},
      {"coil_cut_unequal", mark("All coils are of one length."), checks::coil_cut_unequal},
      {"water_too_cold", mark("The entering water stays above the coldest allowed."), checks::water_too_cold},
      {"water_too_warm", mark("The entering water stays below the warmest allowed."), checks::water_too_warm},
      {"ground_freezes", mark("Ground does not freeze for long round the pipe."), checks::ground_freezes},
      {"backup_heat", mark("The heat pump carries nearly all of the heat."), checks::backup_heat},
      {"cooling_short", mark("The heat pump carries the cooling."), checks::cooling_short},
      {"outside_table", mark("The water stays within the performance table."), checks::outside_table},
      {"design_day_missing", mark("The weather year holds a day as cold as the design day."),
       checks::design_day_missing},
      {"circuits_unbalanced", mark("All circuits get nearly the same flow."), checks::circuits_unbalanced},
      {"circulator_weak", mark("The circulator gives the flow wanted."), checks::circulator_weak},
      {"freeze_protection", mark("The fluid freezes below the coldest there is, with a margin."),
       checks::freeze_protection},
      {"laminar_in_winter", mark("Flow in the coils stays turbulent."), checks::laminar_in_winter},
      {"purge_not_reached", mark("The flush cart reaches the purge velocity everywhere."),
       checks::purge_not_reached},
      {"price_missing", mark("Every line of the bill has a price."), checks::price_missing},
      {"price_old", mark("Prices are no older than the price book allows."), checks::price_old},
      {"pipe_joined", mark("Every circuit comes whole out of a pipe that is sold."), checks::pipe_joined},
      {"digging_price_apart", mark("The layout weighs digging at what the bill comes to."),
       checks::digging_price_apart},
      {"heat_pump_twice", mark("The heat pump is counted once."), checks::heat_pump_twice},
      {"joint_buried_untested", mark("No joint is buried before its test is passed."),
       checks::joint_buried_untested},
      {"record_faults", mark("Test, flushing and fill were done as asked."), checks::record_faults},
      {"tie_hidden", mark("Every stake can be taped from two house corners."), checks::tie_hidden},
      {"tie_cut", mark("Tapes cut at a good angle."), checks::tie_cut},
  };
  return checks;
}

std::vector<Finding> run_checks(const Plan& plan, const Outcome& outcome) {
  std::vector<Finding> findings;
  for (const CheckEntry& check : all_checks())
    for (Finding& f : check.run(plan, outcome)) findings.push_back(std::move(f));
  mark_accepted(findings, plan.accepted);
  std::stable_sort(findings.begin(), findings.end(), before);
  return findings;
}

}  // namespace underlawn
