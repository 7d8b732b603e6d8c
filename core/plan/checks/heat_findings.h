// SPDX-License-Identifier: GPL-3.0-or-later
// What the checks of temperatures share.
#pragma once

#include "plan/finding.h"
#include "plan/outcome.h"

namespace underlawn::checks {

// Null where nothing was simulated.
const Simulation* simulated(const Outcome& outcome);
const YearSum* last_year(const Outcome& outcome);

// "year 25, 3 Feb, 06:00" of the coldest or warmest entering water.
std::string when_coldest(const Simulation& simulation);
std::string when_warmest(const Simulation& simulation);

// An error about a limit of the entering water, at every trench.
Finding limit_broken(const char* rule, std::string title, double measured, double limit,
                     const Outcome& outcome);

inline constexpr double kSameTemperature = 0.005;  // K: what no figure shows is not found fault with

}  // namespace underlawn::checks
