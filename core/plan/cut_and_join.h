// SPDX-License-Identifier: GPL-3.0-or-later
// One thing made two, two made one. The first part keeps id, name and all that was set; the others get new
// ids and the same settings. What cannot be is refused with the reason.
#pragma once

#include <vector>

#include "base/result.h"
#include "plan/plan.h"

namespace underlawn::edit {

// A utility in two at the point of it nearest to `at`. Refused at its ends, and for what is no line.
Result<Plan> line_cut(Plan plan, int feature_id, Point at);
// A drawn trench in two; both keep its depth, pipe typed for it is shared out by length.
Result<Plan> trench_cut(Plan plan, int locked, Point at);
// An area in as many as the straight line through the cut's two points makes of it. Refused where the line
// misses it.
Result<Plan> area_cut(Plan plan, int feature_id, Segment cut);

// Utilities of one kind end to end (gaps up to `reach` m are bridged, no corner stays where they meet
// straight) or areas of one kind that meet, made one with the first one's id. Refused for less than two, for
// different kinds, for what does not meet, for areas with a hole between them.
Result<Plan> joined(Plan plan, const std::vector<int>& feature_ids, double reach);

}  // namespace underlawn::edit
