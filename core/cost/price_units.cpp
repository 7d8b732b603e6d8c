// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "base/say.h"
#include "base/units.h"
#include "cost/bill.h"

namespace underlawn {

namespace {

constexpr double kHour = 3600;

bool is_counted(PriceUnit unit) {
  return unit == PriceUnit::each || unit == PriceUnit::hour || unit == PriceUnit::day;
}

std::string number_text(double value) {
  return print_quantity(Quantity::count, value, UnitSystem::metric);
}

}  // namespace

Quantity quantity_of(PriceUnit unit) {
  switch (unit) {
    case PriceUnit::metre:
      return Quantity::length;
    case PriceUnit::square_metre:
      return Quantity::area;
    case PriceUnit::cubic_metre:
      return Quantity::volume;
    case PriceUnit::litre:
      return Quantity::fluid_volume;
    case PriceUnit::kilogram:
      return Quantity::mass;
    case PriceUnit::hour:
      return Quantity::duration;
    case PriceUnit::each:
    case PriceUnit::day:
      break;
  }
  return Quantity::count;
}

double si_of(PriceUnit unit) {
  return unit == PriceUnit::litre ? 1e-3 : unit == PriceUnit::hour ? kHour : 1;
}

std::string unit_text(PriceUnit unit, UnitSystem system) {
  if (unit == PriceUnit::each) return say_as("of a price", "each");
  if (unit == PriceUnit::day) return say_as("of a price", "day");
  if (unit == PriceUnit::hour) return "h";
  const std::string_view text = bare_unit(quantity_of(unit), system).text;
  return std::string(text.substr(text.find_first_not_of(' ')));
}

double shown_unit_of(PriceUnit unit, UnitSystem system) {
  if (is_counted(unit)) return 1;
  return bare_unit(quantity_of(unit), system).factor / si_of(unit);
}

std::string amount_text(PriceUnit unit, double amount, UnitSystem system) {
  if (unit == PriceUnit::day) return amount == 1 ? say("1 day") : say("{} days", number_text(amount));
  if (is_counted(unit)) {
    const std::string suffix = unit == PriceUnit::each ? "" : " " + unit_text(unit, system);
    return number_text(unit == PriceUnit::hour ? std::round(10 * amount) / 10 : amount) + suffix;
  }
  return print_quantity(quantity_of(unit), amount * si_of(unit), system, Fineness::coarse);
}

std::string packs_text(const BillLine& line, UnitSystem system) {
  std::string text;
  for (const PackCount& p : line.bought.packs) {
    if (!text.empty()) text += " + ";
    if (p.pack == 0) {
      text += say("{} cut to length", p.count);
      continue;
    }
    text += std::to_string(p.count) + " x " +
            (line.unit == PriceUnit::each
                 ? number_text(p.pack)
                 : number_text(std::round(100 * p.pack / shown_unit_of(line.unit, system)) / 100) + " " +
                       unit_text(line.unit, system));
  }
  return text;
}

}  // namespace underlawn
