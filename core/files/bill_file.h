// SPDX-License-Identifier: GPL-3.0-or-later
// The bill and the running costs for other programs.
#pragma once

#include <string>

#include "cost/take_off.h"
#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

std::string bill_group_name(BillGroup group);  // "pipe", for files

// RFC 4180, a line of the bill each, then the sums; amounts and prices in the plan's units. Needs
// Outcome::bill.
std::string bill_csv(const Plan& plan, const Outcome& outcome);

// Everything, amounts in SI with their unit beside them, and the comparison where there is one.
std::string bill_json(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
