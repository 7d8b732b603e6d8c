// SPDX-License-Identifier: GPL-3.0-or-later
// What is bought, and what it costs by line.
#pragma once

#include "sheets/block_sheet.h"

namespace underlawn {

class MaterialsSheet : public sheet::BlockSheet {
 public:
  MaterialsSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup);
};

}  // namespace underlawn
