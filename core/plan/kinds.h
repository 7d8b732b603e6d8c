// SPDX-License-Identifier: GPL-3.0-or-later
// What a drawn thing is taken for, changed afterwards.
#pragma once

#include <vector>

#include "plan/plan.h"

namespace underlawn::edit {

// Kinds that are drawn in that shape, in the order of FeatureKind.
std::vector<FeatureKind> kinds_of_shape(FeatureShape shape);

// These features as another kind of the same shape; what is not there, of another shape or of that kind
// already stays as it is. What was set or accepted for the old kind goes: own clearances, the entry point of
// a house.
Plan with_kind(Plan plan, const std::vector<int>& feature_ids, FeatureKind kind);

}  // namespace underlawn::edit
