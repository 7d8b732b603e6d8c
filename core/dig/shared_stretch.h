// SPDX-License-Identifier: GPL-3.0-or-later
// Where a line lies on the floors of the coil trenches that the supply run shares.
#pragma once

#include <vector>

#include "field/trench.h"

namespace underlawn {

struct SharedParts {
  std::vector<Polyline> shared;  // on the floor of a coil trench whose role is supply
  std::vector<Polyline> own;     // off them
};
// Both in the order of the line; parts shorter than kSamePlace are dropped.
SharedParts parts_shared(const Polyline& line, const std::vector<Trench>& trenches);

}  // namespace underlawn
