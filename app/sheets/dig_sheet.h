// SPDX-License-Identifier: GPL-3.0-or-later
// The dig sheet: what the crew takes to the lot. First the plan to scale with every trench end tied to house
// corners, then checks, tables, details, cautions. Every number on it is one of the outcome's.
#pragma once

#include "sheets/map_sheet.h"

namespace underlawn {

class DigSheet : public sheet::MapSheet {
 public:
  DigSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup);
};

}  // namespace underlawn
