// SPDX-License-Identifier: GPL-3.0-or-later
// What the permit plan says beside its drawing.
#pragma once

#include "plan/clearings.h"
#include "sheets/block.h"

namespace underlawn::sheet {

BlockPtr clearing_table(const Plan& plan, const std::vector<Clearing>& all);
BlockPtr loop_table(const Plan& plan, const Outcome& outcome);
BlockPtr lot_table(const Plan& plan);
// What other rule books ask for the kinds of things on this lot.
BlockPtr elsewhere_table(const Plan& plan);
BlockPtr permit_notes(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn::sheet
