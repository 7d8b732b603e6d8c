// SPDX-License-Identifier: GPL-3.0-or-later
// What the order of digging says, in words.
#pragma once

#include "base/quantity.h"
#include "dig/dig_order.h"

namespace underlawn {

// "north-west": where a direction on the drawing points.
std::string compass_word(const Site& site, Point direction);

// "from its end back to its head", "from the house out".
std::string way_of_digging(const DigStep& step);
// "spoil to the north, 10'-11" wide and 4'-1" high, into trench 1"; "spoil trucked off".
std::string spoil_words(const DigStep& step, const Site& site, UnitSystem units);

// "trench 3", "trenches 1 and 2".
std::string trenches_named(const std::vector<int>& numbers);

// A step's place in the order, from 1, as Roman numerals: never taken for the number of a trench.
std::string step_numeral(int place);

}  // namespace underlawn
