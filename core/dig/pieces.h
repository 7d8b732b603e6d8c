// SPDX-License-Identifier: GPL-3.0-or-later
// What is dug in one go: a coil trench, a leg of the header, a stretch of the run.
#pragma once

#include "dig/dig_order.h"

namespace underlawn {

// Their lines run from head to end, and from the house on. Coil trenches first, as numbered.
std::vector<DigStep> pieces_of(const Layout& layout, const DigPlan& dig, const Wishes& wishes,
                               const DigWishes& how);

Ring footprint(const DigStep& piece);  // at the ground, edge to edge

}  // namespace underlawn
