// SPDX-License-Identifier: GPL-3.0-or-later
// What the map of heaps and machine is drawn with.
#pragma once

#include "base/quantity.h"
#include "dig/dig_order.h"
#include "sheets/signs.h"

namespace underlawn::sheet {

// Only what is on the map of this order.
std::vector<Sign> dig_signs(const DigOrder& order, double excavator_width, UnitSystem units);

}  // namespace underlawn::sheet
