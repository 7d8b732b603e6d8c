// SPDX-License-Identifier: GPL-3.0-or-later
// What a solved loop does, for what it has to hold.
#pragma once

#include <optional>

#include "flow/hydraulics.h"
#include "flow/purge.h"
#include "plan/plan.h"
#include "plan/record/as_built_solve.h"
#include "thermal/temperatures.h"

namespace underlawn {

// Nothing where it was not solved.
struct LoopDoes {
  std::optional<double> coldest, warmest;        // deg C, water to the heat pump over all years
  std::optional<double> coldest_fluid;           // deg C, back from the heat pump
  std::optional<double> freezing;                // deg C
  std::optional<double> imbalance, pump, flush;  // ratio; m3/s of circulator and cart
  std::optional<double> flush_asked;             // m3/s
};
LoopDoes does(const Flow* flow, const Purge* purge, const Temperatures* temperatures);
std::vector<Hold> holds_of(const Plan& plan, const LoopDoes& planned, const LoopDoes& built);

}  // namespace underlawn
