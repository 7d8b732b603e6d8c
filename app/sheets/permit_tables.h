// SPDX-License-Identifier: GPL-3.0-or-later
// What the permit plan says beside its drawing.
#pragma once

#include "plan/clearings.h"
#include "sheets/block.h"

namespace underlawn::sheet {

// Distances that a reviewer looks for on the drawing: to septic, well and easement, and to house and lot line
// where they are no more than four times what is asked. The rest stand in the table only.
bool is_dimensioned(const Plan& plan, const Clearing& clearing);
BlockPtr clearing_table(const Plan& plan, const std::vector<Clearing>& all);
BlockPtr loop_table(const Plan& plan, const Outcome& outcome);
BlockPtr lot_table(const Plan& plan);
// What other rule books ask for the kinds of things on this lot.
BlockPtr elsewhere_table(const Plan& plan);
BlockPtr permit_notes(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn::sheet
