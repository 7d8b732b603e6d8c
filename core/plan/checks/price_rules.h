// SPDX-License-Identifier: GPL-3.0-or-later
// Rules about money, one a file of the same name.
#pragma once

#include "plan/checks/check.h"

namespace underlawn::checks {

std::vector<Finding> price_missing(const Plan& plan, const Outcome& outcome);
std::vector<Finding> price_old(const Plan& plan, const Outcome& outcome);
std::vector<Finding> pipe_joined(const Plan& plan, const Outcome& outcome);
std::vector<Finding> digging_price_apart(const Plan& plan, const Outcome& outcome);
std::vector<Finding> heat_pump_twice(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn::checks
