// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "plan/outcome.h"
#include "plan/plan.h"
#include "sheets/sheet_kinds.h"

namespace underlawn::cli {

struct SheetOrder {
  std::vector<const SheetKind*> kinds;
  SheetSetup setup;
  std::string path;   // of the file, or of the folder where each has its own
  bool each = false;  // a file each
  std::string name;   // of the plan: files in a folder begin with it
};

// Writes sheets without a display; gives the files written. What lies off a page goes to standard error.
Result<std::vector<std::string>> sheets_out(const Plan& plan, const Outcome& outcome,
                                            const SheetOrder& order);

}  // namespace underlawn::cli
