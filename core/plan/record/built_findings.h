// SPDX-License-Identifier: GPL-3.0-or-later
// What the checks find where it was really dug.
#pragma once

#include <string>
#include <vector>

#include "base/quantity.h"
#include "plan/finding.h"
#include "plan/outcome.h"

namespace underlawn {

// Of where things lie (spacing, setbacks, clearances, depths): those that the plan does not have, or less of.
// What was accepted is not told again. Heat and flow have their limits (Hold).
std::vector<Finding> built_findings(const Outcome& planned, const Outcome& built);

// "9'-0\" as built; 12'-0\" is asked. Dig it …"
std::string built_finding_words(const Finding& finding, UnitSystem units);

}  // namespace underlawn
