// SPDX-License-Identifier: GPL-3.0-or-later
// What is done at one coil trench, in the order in which it is done, and who may go in: by its sides as
// planned.
#pragma once

#include <QStringList>

#include "plan/outcome.h"
#include "plan/plan.h"
#include "sheets/block.h"

namespace underlawn::sheet {

// Whether anybody goes into it to work, as planned.
Item who_goes_in(const Plan& plan);
// Boxes to tick, in the order of that trench's calendar: what is covered before the loop is tested has its
// ties taken and its tape laid before.
QStringList trench_ticks(const Plan& plan, const Outcome& outcome, int trench);
// m from the ground to the warning tape: a quarter of the depth.
double tape_down(double depth);

}  // namespace underlawn::sheet
