// SPDX-License-Identifier: GPL-3.0-or-later
// Values in the plan that no solve can use, each named with its bound in the plan's own units.
#pragma once

#include <vector>

#include "base/result.h"
#include "plan/plan.h"

namespace underlawn {

// Negative widths, a ring of two points, a ring that crosses itself, a house outside the lot, not a number,
// an entry point off the wall, two features of one id, a pipe nobody makes. Empty when the plan is sound; an
// empty plan is sound. A plan with troubles still loads, shows and saves; solve() does the stages it can.
std::vector<Trouble> plan_troubles(const Plan& plan);

// The parts of plan_troubles, in its order, by the stage they stop.
std::vector<Trouble> site_troubles(const Plan& plan);    // no buildable ground, no layout
std::vector<Trouble> wishes_troubles(const Plan& plan);  // no layout
std::vector<Trouble> ground_troubles(const Plan& plan);  // no dig
std::vector<Trouble> heat_troubles(const Plan& plan);    // no temperatures
std::vector<Trouble> fluid_troubles(const Plan& plan);   // no flows and no temperatures
std::vector<Trouble> loose_troubles(const Plan& plan);   // stop nothing: house, entry point, pipe names,
                                                         // dimensions, test, survey

}  // namespace underlawn
