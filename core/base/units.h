// SPDX-License-Identifier: GPL-3.0-or-later
// The table of units: what may be typed, what is shown. Factors are exact by definition (international foot
// and pound, conventional BTU_IT) unless said otherwise: NIST SP 811, Appendix B.
#pragma once

#include <array>
#include <span>
#include <string>
#include <string_view>

#include "base/quantity.h"

namespace underlawn {

// A unit as typed: SI value = number * factor + offset. A blank in `symbol` stands for any number of blanks;
// case is not looked at.
struct Unit {
  Quantity quantity;
  std::string_view symbol;
  double factor;
  double offset = 0;
};

// How a quantity is shown in a system: the unit written behind the number, with what it takes to make SI of
// it, and the decimals for coarse, normal and fine. The unit of a bare number is the first row of its
// quantity and system; further rows take over from `from` (absolute SI value) on.
struct ShownUnit {
  Quantity quantity;
  UnitSystem system;
  std::string_view text;  // with the blank before it, where one belongs there
  double factor;
  double offset;
  std::array<int, 3> decimals;
  double from = 0;
  bool trim = false;  // drop noughts at the end
};

std::span<const Unit> units();
std::span<const ShownUnit> shown_units();

// Unit of a bare number.
const ShownUnit& bare_unit(Quantity q, UnitSystem system);
// Unit in which a value of this size is shown.
const ShownUnit& shown_unit(Quantity q, UnitSystem system, double si);

// "m", "m3", "W/(m K)": the SI unit (deg C for temperatures); "1" for plain numbers.
std::string_view si_symbol(Quantity q);

// "length", "flow": how a quantity is called in a message, and a text that can be read as one.
std::string quantity_name(Quantity q);
std::string quantity_example(Quantity q);

}  // namespace underlawn
