// SPDX-License-Identifier: GPL-3.0-or-later
// The rules, one a file of the same name. Each is a pure function from plan and outcome to findings.
#pragma once

#include "plan/checks/check.h"

namespace underlawn::checks {

// Where coil trenches lie.
std::vector<Finding> trench_outside_lot(const Plan& plan, const Outcome& outcome);
std::vector<Finding> trench_in_setback(const Plan& plan, const Outcome& outcome);
std::vector<Finding> trench_in_clearance(const Plan& plan, const Outcome& outcome);
std::vector<Finding> trench_spacing(const Plan& plan, const Outcome& outcome);
std::vector<Finding> circuits_missing(const Plan& plan, const Outcome& outcome);

// Where header and run lie.
std::vector<Finding> no_entry_or_no_way(const Plan& plan, const Outcome& outcome);
std::vector<Finding> run_outside_lot(const Plan& plan, const Outcome& outcome);
std::vector<Finding> run_in_setback(const Plan& plan, const Outcome& outcome);
std::vector<Finding> header_run_clearance(const Plan& plan, const Outcome& outcome);
std::vector<Finding> run_in_root_zone(const Plan& plan, const Outcome& outcome);
std::vector<Finding> run_through_trench(const Plan& plan, const Outcome& outcome);
std::vector<Finding> conduits_cross(const Plan& plan, const Outcome& outcome);
std::vector<Finding> easement_crossed(const Plan& plan, const Outcome& outcome);
std::vector<Finding> pavement_cut(const Plan& plan, const Outcome& outcome);
std::vector<Finding> utility_crossing(const Plan& plan, const Outcome& outcome);
std::vector<Finding> utility_depth_conflict(const Plan& plan, const Outcome& outcome);
std::vector<Finding> utility_through(const Plan& plan, const Outcome& outcome);

// Depth and earth.
std::vector<Finding> trench_depth_protection(const Plan& plan, const Outcome& outcome);
std::vector<Finding> depth_against_frost(const Plan& plan, const Outcome& outcome);
std::vector<Finding> spoil_room(const Plan& plan, const Outcome& outcome);
std::vector<Finding> sloped_top_overlap(const Plan& plan, const Outcome& outcome);
std::vector<Finding> spoil_over_undug(const Plan& plan, const Outcome& outcome);
std::vector<Finding> spoil_lies_on(const Plan& plan, const Outcome& outcome);
std::vector<Finding> way_over_utility(const Plan& plan, const Outcome& outcome);
std::vector<Finding> way_over_roots(const Plan& plan, const Outcome& outcome);
std::vector<Finding> way_tight(const Plan& plan, const Outcome& outcome);
std::vector<Finding> filled_before_test(const Plan& plan, const Outcome& outcome);
std::vector<Finding> first_days_differ(const Plan& plan, const Outcome& outcome);
std::vector<Finding> machine_reach(const Plan& plan, const Outcome& outcome);
std::vector<Finding> sides_chosen(const Plan& plan, const Outcome& outcome);

// Pipe and coil.
std::vector<Finding> bend_too_tight(const Plan& plan, const Outcome& outcome);
std::vector<Finding> coil_wider_than_trench(const Plan& plan, const Outcome& outcome);
std::vector<Finding> coil_pitch_range(const Plan& plan, const Outcome& outcome);
std::vector<Finding> coil_cut_unequal(const Plan& plan, const Outcome& outcome);

// Temperatures.
std::vector<Finding> water_too_cold(const Plan& plan, const Outcome& outcome);
std::vector<Finding> water_too_warm(const Plan& plan, const Outcome& outcome);
std::vector<Finding> ground_freezes(const Plan& plan, const Outcome& outcome);
std::vector<Finding> backup_heat(const Plan& plan, const Outcome& outcome);
std::vector<Finding> cooling_short(const Plan& plan, const Outcome& outcome);
std::vector<Finding> outside_table(const Plan& plan, const Outcome& outcome);
std::vector<Finding> design_day_missing(const Plan& plan, const Outcome& outcome);

// Flow.
std::vector<Finding> circuits_unbalanced(const Plan& plan, const Outcome& outcome);
std::vector<Finding> circulator_weak(const Plan& plan, const Outcome& outcome);
std::vector<Finding> freeze_protection(const Plan& plan, const Outcome& outcome);
std::vector<Finding> laminar_in_winter(const Plan& plan, const Outcome& outcome);
std::vector<Finding> purge_not_reached(const Plan& plan, const Outcome& outcome);

// What was recorded on the job.
std::vector<Finding> joint_buried_untested(const Plan& plan, const Outcome& outcome);
std::vector<Finding> record_faults(const Plan& plan, const Outcome& outcome);

// Setting out.
std::vector<Finding> tie_hidden(const Plan& plan, const Outcome& outcome);
std::vector<Finding> tie_cut(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn::checks
