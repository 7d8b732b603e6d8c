// SPDX-License-Identifier: GPL-3.0-or-later
// What the pages of the proposal have in common.
#pragma once

#include "sheets/family_blocks.h"
#include "sheets/family_facts.h"
#include "sheets/proposal_blocks.h"

namespace underlawn::sheet {

using Blocks = std::vector<BlockPtr>;

// As it was typed; a usual term or a day in the language of the sheet.
QString term(const std::string& kept);
QString or_else(const std::string& text, const QString& usual);
QString date_words(const QDate& day);  // with its weekday
QString plain_date(const QDate& day);

double height_of(const Blocks& blocks, double width);
BlockPtr prose(const QString& heading, const QString& text, double points);

// Of the lot as it is drawn, so that pictures have no empty margins: height for a width.
double picture_height(const ProposalPage& page, const LotPicture& how, double width, double most);
// The lot at a moment, its names beside it or none.
Pictures::Picture lot_picture(const ProposalPage& page, const QString& title, const QString& caption,
                              const LotPicture& how);
// Puts the pictures at their place, as high as the page has room for, between `least` and `most`.
void add_pictures(Blocks& blocks, std::size_t place, std::vector<Pictures::Picture> pictures,
                  const ProposalPage& page, double least, double most);

// Whether something is put beside the loop's costs, so that the pages may speak of saving.
bool compared(const FamilyFacts& facts);

// How near the work comes to what people love and what it does there, as far as that stands on page `number`.
Blocks near_blocks(const ProposalPage& page, int number);

}  // namespace underlawn::sheet
