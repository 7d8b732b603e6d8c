// SPDX-License-Identifier: GPL-3.0-or-later
// Coil, header, entry and trench, drawn to scale for whoever builds or inspects them.
#pragma once

#include "sheets/block_sheet.h"

namespace underlawn {

class DetailsSheet : public sheet::BlockSheet {
 public:
  DetailsSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup);
};

}  // namespace underlawn
