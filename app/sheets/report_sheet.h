// SPDX-License-Identifier: GPL-3.0-or-later
// Every figure of the plan with its formula, inputs and source, in chapters, with contents and index.
#pragma once

#include "sheets/block_sheet.h"

namespace underlawn {

class ReportSheet : public sheet::BlockSheet {
 public:
  ReportSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup);
};

}  // namespace underlawn
