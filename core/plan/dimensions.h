// SPDX-License-Identifier: GPL-3.0-or-later
// Dimensions: what they measure, where their lines lie, and how they keep to what they measure.
#pragma once

#include <optional>

#include "plan/plan.h"

namespace underlawn {

// What is written on it, m.
double measured(const Dimension& d);

// Its line, from beside `from` to beside `to`. None where it measures no length.
std::optional<Segment> line_of(const Dimension& d);

namespace edit {

// Refused (the plan as it was): places beyond kLargestPlan, both the same, more than kMostDimensions.
Plan with_dimension(Plan plan, Dimension d);
Plan without_dimension(Plan plan, int index);
// `part` 0: where it measures from, 1: to where, 2: its line is drawn through `to`.
Plan moved_dimension_part(Plan plan, int index, int part, Point to);
Plan moved_dimension(Plan plan, int index, Point by);

// `after` with the dimensions brought along: an end that lay on a corner or an edge in `before` lies on the
// same corner, or at the same share of the same edge, of what it has become. Dimensions that `after` has
// changed itself stay as they are there.
Plan with_dimensions_following(const Plan& before, Plan after);

}  // namespace edit
}  // namespace underlawn
