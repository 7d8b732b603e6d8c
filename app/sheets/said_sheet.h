// SPDX-License-Identifier: GPL-3.0-or-later
// A sheet in the language asked for, whatever the window speaks.
#pragma once

#include <vector>

#include "sheets/sheet_kinds.h"

namespace underlawn {

// As each kind.make(), in setup.language and setup.units; empty: as the program speaks. `outcome` is as the
// program speaks: for another language or other units the plan is solved again for its words, once for all
// the sheets.
std::vector<SheetPtr> make_sheets(const std::vector<const SheetKind*>& kinds, const Plan& plan,
                                  const Outcome& outcome, const SheetSetup& setup);
SheetPtr make_sheet(const SheetKind& kind, const Plan& plan, const Outcome& outcome, const SheetSetup& setup);

}  // namespace underlawn
