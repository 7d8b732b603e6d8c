// SPDX-License-Identifier: GPL-3.0-or-later
// The test, flush and fill record: with what was written down, or as a blank form with the expected figures
// beside empty boxes.
#pragma once

#include "sheets/block_sheet.h"

namespace underlawn {

class RecordSheet : public sheet::BlockSheet {
 public:
  RecordSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup);
};

class RecordForm : public sheet::BlockSheet {
 public:
  RecordForm(const Plan& plan, const Outcome& outcome, const SheetSetup& setup);
};

}  // namespace underlawn
