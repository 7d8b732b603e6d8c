// SPDX-License-Identifier: GPL-3.0-or-later
// Taped lengths as they are printed: no finer than a tape is read, but fine enough that the stake comes back.
#pragma once

#include <QString>

#include "plan/plan.h"
#include "plan/stake_out.h"

namespace underlawn::sheet {

// A quarter inch or 5 mm where the point found from the printed lengths is then within kStakeError of the
// drawn one; else a sixteenth or 1 mm.
struct PrintedTapes {
  QString first, second;
};
PrintedTapes printed_tapes(const Plan& plan, const StakeOut& stake_out, const Tie& tie);
inline constexpr double kStakeError = 0.008;  // m

}  // namespace underlawn::sheet
