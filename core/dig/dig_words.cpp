// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/dig_words.h"

#include <cmath>
#include <numbers>

namespace underlawn {

std::string_view compass_word(const Site& site, Point direction) {
  static constexpr std::string_view kWinds[] = {"north", "north-east", "east", "south-east",
                                                "south", "south-west", "west", "north-west"};
  const double bearing = site.north - std::atan2(direction.y, direction.x);
  const double eighths = bearing / (std::numbers::pi / 4);
  const int wind = static_cast<int>(std::lround(eighths)) % 8;
  return kWinds[wind < 0 ? wind + 8 : wind];
}

std::string way_of_digging(const DigStep& step) {
  if (step.kind == DigKind::trench)
    return step.from_end ? "from its end back to its head" : "from its head back to its end";
  if (step.kind == DigKind::run) return step.from_end ? "toward the house" : "from the house out";
  return step.from_end ? "toward the supply run" : "away from the supply run";
}

std::string trenches_named(const std::vector<int>& numbers) {
  std::string all = numbers.size() > 1 ? "trenches " : "trench ";
  for (std::size_t i = 0; i < numbers.size(); ++i)
    all += (i == 0 ? "" : i + 1 == numbers.size() ? " and " : ", ") + std::to_string(numbers[i]);
  return all;
}

std::string spoil_words(const DigStep& step, const Site& site, UnitSystem units) {
  if (!step.no_room.empty()) return "no room for its spoil";
  if (step.hauled) return "spoil trucked off";
  const Point along = unit(step.line.back() - step.line.front());
  const Point out = (step.spoil_left ? 1.0 : -1.0) * left_normal(along);
  const auto shown = [&](double m) { return print_quantity(Quantity::length, m, units, Fineness::coarse); };
  std::string words = "spoil to the " + std::string(compass_word(site, out)) + ", " + shown(step.heap.width) +
                      " wide and " + shown(step.heap.height) + " high";
  if (!step.into.empty()) words += ", into " + trenches_named(step.into);
  return words;
}

}  // namespace underlawn
