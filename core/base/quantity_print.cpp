// SPDX-License-Identifier: GPL-3.0-or-later
#include <charconv>
#include <cmath>

#include "base/quantity.h"
#include "base/units.h"

namespace underlawn {

namespace {

constexpr double kFoot = 0.3048;
constexpr double kLargestFixed = 1e12;  // above this a number is written with an exponent
constexpr std::string_view kDash = "–";

std::string fixed(double value, int decimals) {
  char buffer[64];
  const auto end = std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, decimals);
  return {buffer, end.ptr};
}

std::string shortest(double value) {
  char buffer[64];
  const auto end = std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::scientific);
  return {buffer, end.ptr};
}

void trim_noughts(std::string& number) {
  if (number.find('.') == std::string::npos) return;
  number.erase(number.find_last_not_of('0') + 1);
  if (number.back() == '.') number.pop_back();
}

// "-0.00" reads as if it meant something.
void drop_sign_of_nought(std::string& number) {
  if (number[0] == '-' && number.find_first_of("123456789") == std::string::npos) number.erase(0, 1);
}

std::string decimal(double si, const ShownUnit& unit, Fineness fineness) {
  const double value = (si - unit.offset) / unit.factor;
  if (!std::isfinite(value)) return std::string(kDash);
  if (std::abs(value) >= kLargestFixed) return shortest(value) + std::string(unit.text);
  std::string number = fixed(value, unit.decimals[static_cast<std::size_t>(fineness)]);
  if (unit.trim) trim_noughts(number);
  drop_sign_of_nought(number);
  return number + std::string(unit.text);
}

int parts_of_inch(Fineness fineness) {
  switch (fineness) {
    case Fineness::coarse:
      return 1;
    case Fineness::normal:
      return 2;
    case Fineness::fine:
      return 16;
  }
  return 1;
}

// "3 1/2", "1/2", "3": `count` parts of which an inch has `parts`. Behind feet a nought is written: 6'-0
// 1/2".
std::string inches(long long count, long long parts, bool behind_feet) {
  const long long whole = count / parts;
  long long top = count % parts;
  if (top == 0) return std::to_string(whole);
  while (top % 2 == 0) {
    top /= 2;
    parts /= 2;
  }
  const std::string fraction = std::to_string(top) + "/" + std::to_string(parts);
  return whole == 0 && !behind_feet ? fraction : std::to_string(whole) + " " + fraction;
}

// The whole length is rounded to the finest part once and then split, so that 12 in always carries.
std::string feet_inches(double si, Fineness fineness) {
  const long long parts = parts_of_inch(fineness);
  const double in_parts = std::round(std::abs(si) / kFoot * 12 * static_cast<double>(parts));
  const auto count = static_cast<long long>(in_parts);
  const long long feet = count / (12 * parts);
  std::string text = inches(count % (12 * parts), parts, feet > 0) + "\"";
  if (feet > 0) text = std::to_string(feet) + "'-" + text;
  return (si < 0 && count > 0 ? "-" : "") + text;
}

}  // namespace

std::string print_quantity(Quantity q, double si, UnitSystem system, Fineness fineness) {
  if (!std::isfinite(si)) return std::string(kDash);
  if (q == Quantity::length && system == UnitSystem::us && std::abs(si) < kLargestFixed)
    return feet_inches(si, fineness);
  return decimal(si, shown_unit(q, system, si), fineness);
}

}  // namespace underlawn
