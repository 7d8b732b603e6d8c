// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/details_sheet.h"

#include "sheets/contents.h"

namespace underlawn {

using namespace sheet;

DetailsSheet::DetailsSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup)
    : BlockSheet(plan, outcome, setup,
                 {QObject::tr("Details"), QObject::tr("COIL, HEADER AND ENTRY DETAILS")}, 2) {
  std::vector<Piece> pieces;
  add(pieces, coil_block(plan, outcome), true);
  add(pieces, section_block(plan, outcome), true);
  add(pieces, header_block(plan, outcome), true);
  add(pieces, head_block(plan, outcome), true);
  add(pieces, header_table(plan, outcome));
  add(pieces, entry_block(plan, outcome));
  add(pieces, crossing_table(plan, outcome), true);
  if (pieces.empty())
    add(pieces,
        std::make_shared<Items>(
            QObject::tr("DETAILS"),
            std::vector<Item>{{"", "", QObject::tr("Nothing is laid yet, so there is nothing to detail.")}},
            10));
  set(pieces);
}

}  // namespace underlawn
