// SPDX-License-Identifier: GPL-3.0-or-later
// What the fill's readings tell, against what the plan asks.
#pragma once

#include <optional>
#include <vector>

#include "flow/charge.h"
#include "plan/outcome.h"
#include "plan/plan.h"
#include "plan/record/record_line.h"

namespace underlawn {

struct FillJudgement {
  double asked_product = 0;             // m3 of product
  double asked_freezing = 0;            // deg C, of the plan's share of antifreeze
  double wanted_freezing = 0;           // deg C: coldest fluid less the margin
  std::optional<double> mass_fraction;  // that the refractometer's reading means
  std::optional<double> volume;         // m3 of loop that product put in and reading together mean
  std::optional<double> exchange;       // m3 of fluid to take out and replace by product, where it is weak
  std::optional<Charge> asked_charge;   // pressure to leave on the loop
  std::vector<RecordLine> lines;        // keys begin with "fill."
};

// `flow` is the plan's, `coldest` what coldest_fluid says, deg C. The product's freezing point is that of its
// antifreeze alone: inhibitors left out.
FillJudgement judge_fill(const Plan& plan, const Flow& flow, double coldest);

}  // namespace underlawn
