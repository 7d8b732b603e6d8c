// SPDX-License-Identifier: GPL-3.0-or-later
// The sizes of header and run, as they will be laid: what was designed where a size was left open, else what
// was asked for.
#pragma once

#include <string>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

std::string run_size(const Plan& plan, const Outcome& outcome);  // "1-1/2 in DR 11"
std::string header_and_run_sizes(const Plan& plan,
                                 const Outcome& outcome);  // "1-1/2 in DR 11 and 3/4 in DR 11"

}  // namespace underlawn
