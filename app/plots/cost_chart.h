// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plan/outcome.h"
#include "plan/plan.h"
#include "plots/chart.h"

namespace underlawn {

// What each way to heat and cool has cost by the end of each year, first cost at year 0; a mark where the
// loop's line comes to lie under another's.
Chart paid_chart(const Plan& plan, const Outcome& outcome);
// What those marks are, against what, and why the paybacks told elsewhere are others; "" without marks.
QString crossing_words(const Outcome& outcome);

}  // namespace underlawn
