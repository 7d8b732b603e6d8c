// SPDX-License-Identifier: GPL-3.0-or-later
// What follows from a plan, for machines: JSON with units in the key names and every figure. Schema:
// resources/results.schema.json.
#pragma once

#include <string>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

inline constexpr int kResultsFormat = 2;

std::string results_to_text(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
