// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sheets/block.h"

namespace underlawn::sheet {

// The bill: what is counted, rounded up to what is sold, at the book's prices. Null where there is none.
BlockPtr bill_table(const Plan& plan, const Outcome& outcome);
// Every straight and coiled piece of pipe with its tag.
BlockPtr rolls_table(const Plan& plan, const Outcome& outcome);
BlockPtr pieces_table(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn::sheet
