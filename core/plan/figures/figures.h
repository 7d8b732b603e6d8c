// SPDX-License-Identifier: GPL-3.0-or-later
// Every number that the side report, the sheets and the results show, with how it came about. One file a
// group; a group names figures of earlier groups in `from`, never of later ones.
#pragma once

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

// From the plan and the stages before: coil, layout, dig, stake-out. What could not be solved gives no
// figures.
Figures make_figures(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
