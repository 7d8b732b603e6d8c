// SPDX-License-Identifier: GPL-3.0-or-later
// What the proposal says, page by page.
#pragma once

#include <QDate>

#include "sheets/block.h"

namespace underlawn::sheet {

std::vector<BlockPtr> proposal_opening(const Plan& plan, const Outcome& outcome, double width);
std::vector<BlockPtr> proposal_lot(const Plan& plan, const Outcome& outcome, double width);
std::vector<BlockPtr> proposal_warmth(const Plan& plan, const Outcome& outcome, double width);
std::vector<BlockPtr> proposal_agreement(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn::sheet
