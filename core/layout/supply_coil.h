// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "layout/layout.h"

namespace underlawn {

// Where a coil can lie in the trench of the supply run: on a straight stretch of it, inside the ground for
// coil trenches and clear of the field trenches. Its head is the end nearer the header, as near the header as
// can be. Field trenches near the header may lie closer than asked only if the pair rule lets them.
std::optional<Segment> coil_in_run(const Site& site, const Wishes& wishes, const SupplyRun& run,
                                   const Header& header, const std::vector<Segment>& field,
                                   double trench_length);

}  // namespace underlawn
