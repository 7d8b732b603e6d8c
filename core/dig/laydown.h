// SPDX-License-Identifier: GPL-3.0-or-later
// Where pipe is laid down and coils are made.
#pragma once

#include "dig/dig_ground.h"
#include "dig/dig_order.h"

namespace underlawn {

// A circle of kLaydown, where the designer asked for it or as near to the trench heads as there is room: off
// heaps, trenches and the lot line, off the ways of machines where that can be. Our own sizes, no source, but
// nothing lies nearer to an edge than the heaps do (29 CFR 1926.651(j)(2)).
inline constexpr double kLaydown = 2.5;           // m, radius, for rolls of pipe and a rack
inline constexpr double kLaydownOffTrench = 1.5;  // m from the edge, where there is room for it
inline constexpr double kLaydownOffLine = 1.0;    // m from the lot line and from what stands, likewise

// The order is whole but for this.
void find_laydown(const DigGround& ground, const Layout& layout, const DigWishes& how, DigOrder& order);

}  // namespace underlawn
