// SPDX-License-Identifier: GPL-3.0-or-later
// Taped lengths as they are printed: no finer than a tape is read, but fine enough that the stake comes back.
#pragma once

#include <QString>

#include "plan/plan.h"
#include "plan/stake_out.h"

namespace underlawn::sheet {

// A quarter inch or 5 mm where every pair of tapes to this stake then finds it within kStakeError of where it
// is drawn; else a sixteenth or 1 mm. One step for a stake and not for a pair: the same tape stands in
// several tables, and it has to read the same in all.
struct PrintedTapes {
  QString first, second;
};
PrintedTapes printed_tapes(const Plan& plan, const StakeOut& stake_out, const Tie& tie);
inline constexpr double kStakeError = 0.008;  // m

}  // namespace underlawn::sheet
