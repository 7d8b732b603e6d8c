// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/print_price.h"

#include <algorithm>

#include "base/say.h"
#include "base/units.h"

namespace underlawn {

std::string print_price(double price, Quantity amount, UnitSystem units) {
  if (amount == Quantity::count) return print_quantity(Quantity::money, price, units);
  static constexpr double kTon = 3516.8528420667;  // W: 12,000 Btu/h
  const bool tons = amount == Quantity::power && units == UnitSystem::us;
  const ShownUnit& unit = bare_unit(amount, units);
  const std::string_view text =
      unit.text.substr(std::min(unit.text.find_first_not_of(' '), unit.text.size()));
  return say("{} per {}", print_quantity(Quantity::money, price * (tons ? kTon : unit.factor), units),
             tons ? say_as("of cooling", "ton") : std::string(text));
}

}  // namespace underlawn
