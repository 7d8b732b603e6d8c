// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/dig_sheet.h"

namespace underlawn {

Result<void> write_dig_sheet(const Plan&, const Outcome&, const SheetSetup&, const QString& path) {
  return refuse({"sheet_not_there", "the sheet " + path.toStdString(), "not drawn yet", "", ""});
}

}  // namespace underlawn
