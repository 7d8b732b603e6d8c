// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>

#include "base/result.h"
#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

enum class Paper { letter, tabloid, a4, a3 };

struct SheetSetup {
  Paper paper = Paper::letter;
  std::optional<int> scale;  // 1:scale; without it the largest usual scale at which the plan fits
};

// Writes the dig sheet as vector PDF. A Qt application object must be there. Refuses what cannot be drawn to the
// asked scale on the paper, and a file that cannot be written.
Result<void> write_dig_sheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup, const QString& path);

}  // namespace underlawn
