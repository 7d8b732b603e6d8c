// SPDX-License-Identifier: GPL-3.0-or-later
// What the as-built says behind its drawing.
#pragma once

#include <vector>

#include "plan/record/as_built_solve.h"
#include "sheets/block.h"

namespace underlawn::sheet {

struct BuiltFacts {
  const Plan& plan;
  const Outcome& planned;
  const AsBuiltAnswer& built;
  QString folder;  // of the plan file
};

// Run and legs of the header with their depths and pipe.
BlockPtr built_lines(const BuiltFacts& f);
// In the order of the pages; none is null.
std::vector<BlockPtr> as_built_blocks(const BuiltFacts& f);

}  // namespace underlawn::sheet
