// SPDX-License-Identifier: GPL-3.0-or-later
// What a solved plan says of heat, as charts. Where the outcome has no temperatures a chart says why it is
// empty.
#pragma once

#include "plan/outcome.h"
#include "plan/plan.h"
#include "plots/chart.h"

namespace underlawn {

// Water to the heat pump through the first, tenth and last year, against the two limits.
Chart water_chart(const Plan& plan, const Outcome& outcome);
// The ground without a loop, by depth, in four seasons.
Chart ground_chart(const Plan& plan, const Outcome& outcome);
// What the house asks for by month and what the heat pump leaves to back-up, in the last year; where a file
// gives the ground's load, that.
Chart load_chart(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
