// SPDX-License-Identifier: GPL-3.0-or-later
// The as-built: where everything lies, for whoever digs there in the next twenty years. Where nothing is
// recorded yet, the form to record it on, with the planned tapes beside empty boxes.
#pragma once

#include "plan/record/as_built_solve.h"
#include "sheets/map_sheet.h"

namespace underlawn {

class AsBuiltSheet : public sheet::MapSheet {
 public:
  AsBuiltSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup);

 private:
  AsBuiltSheet(const Plan& plan, const Outcome& outcome, const AsBuiltAnswer& built, const SheetSetup& setup);
};

}  // namespace underlawn
