// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "base/quantity.h"

namespace underlawn {

// "15.29 per cu yd": a price (currency a SI unit of the amount) for the unit in which one unit of the amount
// is shown; the bare number for what is counted.
std::string print_price(double price, Quantity amount, UnitSystem units);

}  // namespace underlawn
