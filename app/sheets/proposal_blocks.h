// SPDX-License-Identifier: GPL-3.0-or-later
// What the proposal says, page by page.
#pragma once

#include <QDate>

#include "sheets/block.h"
#include "sheets/family_facts.h"

namespace underlawn::sheet {

// Where there is room left on a page its picture takes it.
struct ProposalPage {
  const Plan& plan;
  const Outcome& outcome;
  const FamilyFacts& facts;      // of both
  double width = 0, height = 0;  // sheet units, of a page's text
  QDate date;
  int pages = 4;         // of the whole proposal, named above the signatures
  double points = 10.5;  // of what is told; notes have 9.5, and nothing is smaller
  // On which page stands how near the work comes to what people love, and what that does to it: 2, 3 or 4.
  int near_table = 3, near_words = 3;
  bool tight = false;  // there is more to tell than room: small pictures, a short table of what is near
};
std::vector<BlockPtr> proposal_opening(const ProposalPage& page);  // `height` is what the title leaves
std::vector<BlockPtr> proposal_lot(const ProposalPage& page);
// What it gives and costs.
std::vector<BlockPtr> proposal_warmth(const ProposalPage& page);
std::vector<BlockPtr> proposal_agreement(const ProposalPage& page);

// "Ines Varga", "Tom Varga" of "Ines and Tom Varga".
QStringList owners_of(const QString& owner);

}  // namespace underlawn::sheet
