// SPDX-License-Identifier: GPL-3.0-or-later
// The loop under a ground load that is given hour by hour, without a heat pump.
#pragma once

#include <stop_token>
#include <vector>

#include "thermal/simulate.h"

namespace underlawn {

// `load`: W taken from the ground (negative: given to it) in each of kYearHours hours, the same every year.
// The flow is on through every hour that has a load, at the hour's own heat. Electricity and house are
// nought. Otherwise as simulate().
Simulation simulate_ground_load(const LoopModel& loop, const std::vector<double>& load, int years,
                                std::stop_token stop = {});

}  // namespace underlawn
