// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/bounded_number.h"

#include <cmath>

#include "base/say.h"
#include "plane/region.h"

namespace underlawn {

namespace {

std::string code_of(const std::string& thing) {
  std::string code;
  for (char c : thing) {
    if (std::isalnum(static_cast<unsigned char>(c)) != 0)
      code += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    else if (!code.empty() && code.back() != '_')
      code += '_';
  }
  return code + "_out_of_bounds";
}

std::string shown(const BoundedNumber& n, double value, UnitSystem units) {
  if (std::isnan(value)) return say("not a number");
  if (std::isinf(value)) return value > 0 ? say("infinite") : say("minus infinite");
  return print_quantity(n.quantity, value, units, Fineness::fine);
}

std::string bound_of(const BoundedNumber& n, UnitSystem units) {
  if (n.low == -std::numeric_limits<double>::infinity()) return say("a finite number");
  const std::string low = shown(n, n.low, units);
  return n.above_low ? say("more than {} and at most {}", low, shown(n, n.high, units))
                     : say("from {} to {}", low, shown(n, n.high, units));
}

bool in_bounds(const BoundedNumber& n) {
  return std::isfinite(n.value) && n.value <= n.high && (n.above_low ? n.value > n.low : n.value >= n.low);
}

}  // namespace

void check_numbers(std::vector<Trouble>& troubles, const Plan& plan,
                   const std::vector<BoundedNumber>& numbers) {
  for (const BoundedNumber& n : numbers)
    if (!in_bounds(n))
      troubles.push_back({code_of(n.kind.empty() ? n.thing : n.kind), translated(n.thing),
                          shown(n, n.value, plan.units), bound_of(n, plan.units), n.advice});
}

void check_places(std::vector<Trouble>& troubles, const Plan& plan, const std::vector<Point>& points,
                  const std::string& name) {
  for (Point p : points) {
    const std::size_t before = troubles.size();
    check_numbers(troubles, plan,
                  {{say("{} point x", name), Quantity::length, p.x, -kLargestPlan, kLargestPlan, false,
                    say("Move the point back."), "point"},
                   {say("{} point y", name), Quantity::length, p.y, -kLargestPlan, kLargestPlan, false,
                    say("Move the point back."), "point"}});
    if (troubles.size() > before) return;  // one such point tells enough
  }
}

}  // namespace underlawn
