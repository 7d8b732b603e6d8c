// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "base/result.h"
#include "plan/plan.h"

namespace underlawn {

// Brings a plan as read into the order that a plan keeps, whatever the file said: ids unique, from 1 and
// rising; at most one rule a kind; acceptances sorted; a lot line of at most kMostRingPoints corners. Says in
// `remarks` what had to change, and keeps those to a number that can be read.
void mend(Plan& plan, std::vector<Trouble>& remarks);

}  // namespace underlawn
