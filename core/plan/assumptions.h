// SPDX-License-Identifier: GPL-3.0-or-later
// What was taken for granted where nothing better was entered; printed with every report.
#pragma once

#include <string>
#include <vector>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

// One sentence each, with where it comes from; only those that bear on what was solved.
std::vector<std::string> assumptions(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
