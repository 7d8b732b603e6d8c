// SPDX-License-Identifier: GPL-3.0-or-later
// The fluid that the temperatures reckon with: the plan's design flow through what is laid.
#pragma once

#include "flow/hydraulics.h"
#include "layout/layout.h"
#include "plan/plan.h"
#include "thermal/circulation.h"

namespace underlawn {

// `flow` as solve_flow gives it; null where there is none: the design flow is then shared equally by the
// trenches. The plan's fluid must be sound. Zero where the pipe is unknown or nothing is laid.
Circulation circulation_of(const Plan& plan, const Flow* flow, const Layout& layout);

}  // namespace underlawn
