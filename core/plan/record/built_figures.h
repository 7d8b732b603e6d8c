// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of what was really dug and laid, for the calculation report beside those of the plan.
#pragma once

#include "plan/record/as_built_solve.h"

namespace underlawn {

// The planned figures, and behind them as "built." + key those of trenches, header, run and earth that were
// built otherwise, the sums of the earth, and what else of that they came from. Just the planned ones where
// nothing was.
Figures with_built(const Figures& planned, const AsBuiltAnswer& built);

}  // namespace underlawn
