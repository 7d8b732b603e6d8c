// SPDX-License-Identifier: GPL-3.0-or-later
// What lies under the pointer.
#pragma once

#include <vector>

#include "canvas/layers.h"
#include "plan/outcome.h"
#include "plan/plan.h"
#include "window/selection.h"

namespace underlawn {

// Everything within `reach` (m) of `at`, what a person most likely means first: points, then lines, then
// areas, small ones before those they lie in; edges of the lot line last. `outcome` may be null.
std::vector<Selected> hits(const Plan& plan, const Outcome* outcome, Point at, double reach);

// Features, drawn trenches and dimensions that lie wholly inside the box, and the entry point.
std::vector<Selected> inside(const Plan& plan, const Box& box);

bool is_shown(const Plan& plan, const Selected& what, const Layers& layers);

}  // namespace underlawn
