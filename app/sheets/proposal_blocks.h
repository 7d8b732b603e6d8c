// SPDX-License-Identifier: GPL-3.0-or-later
// What the proposal says, page by page.
#pragma once

#include <QDate>

#include "sheets/block.h"

namespace underlawn::sheet {

// Where there is room left on a page its picture takes it.
struct ProposalPage {
  const Plan& plan;
  const Outcome& outcome;
  double width = 0, height = 0;  // sheet units, of a page's text
  QDate date;
  int pages = 4;  // of the whole proposal, named above the signatures
};
std::vector<BlockPtr> proposal_opening(const ProposalPage& page);  // `height` is what the title leaves
std::vector<BlockPtr> proposal_lot(const ProposalPage& page);
// What it gives and costs; the distances too where the last page has no room for them.
std::vector<BlockPtr> proposal_warmth(const ProposalPage& page);
std::vector<BlockPtr> proposal_agreement(const ProposalPage& page);

// "Ines Varga", "Tom Varga" of "Ines and Tom Varga".
QStringList owners_of(const QString& owner);

}  // namespace underlawn::sheet
