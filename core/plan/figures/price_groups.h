// SPDX-License-Identifier: GPL-3.0-or-later
// The groups of figures about money.
#pragma once

#include "plan/figures/groups.h"

namespace underlawn::figures {

void add_bill(Figures& all, const Plan& plan, const Outcome& outcome);     // needs Outcome::bill
void add_running(Figures& all, const Plan& plan, const Outcome& outcome);  // needs Outcome::comparison

}  // namespace underlawn::figures
