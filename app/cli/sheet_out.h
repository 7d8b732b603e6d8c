// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "base/result.h"
#include "plan/outcome.h"
#include "plan/plan.h"
#include "sheets/dig_sheet.h"

namespace underlawn::cli {

// Letter for feet, A4 for metres.
Paper usual_paper(const Plan& plan);

// Writes the dig sheet without a display.
Result<void> sheet_out(const Plan& plan, const Outcome& outcome, const SheetSetup& setup,
                       const std::string& path);

}  // namespace underlawn::cli
