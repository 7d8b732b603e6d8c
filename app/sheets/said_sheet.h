// SPDX-License-Identifier: GPL-3.0-or-later
// A sheet in the language asked for, whatever the window speaks.
#pragma once

#include "sheets/sheet_kinds.h"

namespace underlawn {

// What the plan comes to, with its findings and figures named in `language` (a code of language/language.h).
Outcome outcome_in(std::string_view language, const Plan& plan);

// As kind.make(), in setup.language; empty: as the program speaks. `outcome` may be in any language: where it is in
// another, the plan is solved again for its words.
SheetPtr make_sheet(const SheetKind& kind, const Plan& plan, const Outcome& outcome, const SheetSetup& setup);

}  // namespace underlawn
