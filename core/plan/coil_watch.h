// SPDX-License-Identifier: GPL-3.0-or-later
// The pressure of a plan's coils while they are covered before the loop is tested.
#pragma once

#include <vector>

#include "flow/coil_hold.h"
#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

// Numbers of the coil trenches that are covered, wholly or to the run's floor, before the loop is tested.
std::vector<int> coils_covered_early(const Outcome& outcome);

// A coil that is covered so, and how it is watched from where it has been proved until it is covered, nights
// included.
struct CoilWatch {
  int trench = 0;
  CoilHold hold;
};
// In the order of digging; none where none is covered so early, the flow is not solved or the test is
// refused.
std::vector<CoilWatch> coil_watches(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
