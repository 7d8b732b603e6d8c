// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of what was really dug and laid, for the calculation report beside those of the plan.
#pragma once

#include "plan/record/as_built_solve.h"

namespace underlawn {

// The planned figures, and behind them as "built." + key those of trenches, header, run and earth as built,
// and whatever else they came from that is another than planned. Just the planned ones where nothing differs.
Figures with_built(const Figures& planned, const AsBuiltAnswer& built);

}  // namespace underlawn
