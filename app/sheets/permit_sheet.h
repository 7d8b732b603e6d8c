// SPDX-License-Identifier: GPL-3.0-or-later
// The plan for whoever grants the permit: the lot with its dimensions, how far everything keeps from wells,
// septic parts and lot lines, and by which rule.
#pragma once

#include "sheets/map_sheet.h"

namespace underlawn {

class PermitSheet : public sheet::MapSheet {
 public:
  PermitSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup);
};

}  // namespace underlawn
