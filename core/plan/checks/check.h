// SPDX-License-Identifier: GPL-3.0-or-later
// The machinery of checks: one rule a file, a pure function from plan and outcome to findings.
#pragma once

#include <vector>

#include "plan/finding.h"
#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

using Check = std::vector<Finding> (*)(const Plan& plan, const Outcome& outcome);

struct CheckEntry {
  const char* rule;      // "spacing"
  const char* explains;  // one sentence for the list of checks
  Check run;
};

// The flat list of all checks, in the order they are run.
const std::vector<CheckEntry>& all_checks();

// Runs all, marks what the plan accepts, sorts errors first and then by key.
std::vector<Finding> run_checks(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
