// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plan/plan.h"
#include "sheets/sheet.h"

namespace underlawn {

// Letter for feet, A4 for metres.
Paper usual_paper(const Plan& plan);

// As the plan asks, on its usual paper. `plan_path`: of the plan file; empty: not kept yet. A scale or a
// language that there is not is not taken.
SheetSetup setup_for(const Plan& plan, const QString& plan_path);

}  // namespace underlawn
