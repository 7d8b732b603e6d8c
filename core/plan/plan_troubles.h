// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "base/result.h"
#include "plan/plan.h"

namespace underlawn {

// Values in the plan that no solve can use, each named with its bound: negative widths, a ring of two points, a ring
// that crosses itself, a house outside the lot, not a number. Empty when the plan is sound. A plan with troubles still
// loads, shows and saves; solve() does the stages it can.
std::vector<Trouble> plan_troubles(const Plan& plan);

}  // namespace underlawn
