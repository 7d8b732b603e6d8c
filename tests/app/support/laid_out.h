// SPDX-License-Identifier: GPL-3.0-or-later
// Plans with trenches put in place by hand, so that pictures and sheets do not change when the search for a
// layout does. Everything that follows from the trenches comes from the stages of solve().
#pragma once

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn::laid_out {

struct Sample {
  Plan plan;
  Outcome outcome;
};

// The half acre of the sample plans, with `count` trenches behind the house; the run crosses its power line.
Sample half_acre(int count);
// The sample file alder-lane with `count` trenches east of its garden.
Sample alder(int count);
// A plan and trenches of one's own; the header goes along their heads, the run straight to the first.
Sample of(Plan plan, std::vector<Trench> trenches);

}  // namespace underlawn::laid_out
