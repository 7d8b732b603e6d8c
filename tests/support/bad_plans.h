// SPDX-License-Identifier: GPL-3.0-or-later
// Plans and outcomes put together so that every check speaks of one of them, and every bound is broken.
#pragma once

#include <string>
#include <vector>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn::bad {

struct Case {
  std::string name;
  Plan plan;
  Outcome outcome;
};

// Made anew each time, in the language spoken then.
std::vector<Case> cases();

// Every number of a plan, its prices, its record and its as-built is `value`.
Plan out_of_bounds(double value);

// The half acre with trenches that were stopped short, tapes that do not meet and crossings that were
// measured.
Plan built_short();

}  // namespace underlawn::bad
