// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/materials_sheet.h"

#include "sheets/contents.h"
#include "sheets/materials_tables.h"

namespace underlawn {

using namespace sheet;

MaterialsSheet::MaterialsSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup)
    : BlockSheet(plan, outcome, setup,
                 {QObject::tr("Materials list"), QObject::tr("MATERIALS LIST, buried coil loop")}, 1) {
  std::vector<Piece> pieces;
  add(pieces, bill_table(plan, outcome), true);
  add(pieces, header_table(plan, outcome), true);
  add(pieces, pieces_table(plan, outcome), true);
  add(pieces, rolls_table(plan, outcome), true);
  if (pieces.empty())
    add(pieces,
        std::make_shared<Items>(
            QObject::tr("MATERIALS"),
            std::vector<Item>{{"", "", QObject::tr("Nothing is laid yet, so there is nothing to buy.")}},
            10));
  set(pieces);
}

}  // namespace underlawn
