// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/dig_words.h"

#include <cmath>
#include <numbers>

#include "base/say.h"

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
    return step.from_end ? say("from its end back to its head") : say("from its head back to its end");
  if (step.kind == DigKind::run) return step.from_end ? say("toward the house") : say("from the house out");
  return step.from_end ? say("toward the supply run") : say("away from the supply run");
}

std::string trenches_named(const std::vector<int>& numbers) {
  std::string all = numbers.size() > 1 ? say("trenches ") : say("trench ");
  for (std::size_t i = 0; i < numbers.size(); ++i)
    all += (i == 0 ? "" : i + 1 == numbers.size() ? say(" and ") : ", ") + std::to_string(numbers[i]);
  return all;
}

std::string spoil_words(const DigStep& step, const Site& site, UnitSystem units) {
  if (!step.no_room.empty()) return say("no room for its spoil");
  if (step.hauled) return say("spoil trucked off");
  const Point along = unit(step.line.back() - step.line.front());
  const Point out = (step.spoil_left ? 1.0 : -1.0) * left_normal(along);
  const auto shown = [&](double m) { return print_quantity(Quantity::length, m, units, Fineness::coarse); };
  std::string words = say("spoil to the {}, {} wide and {} high", std::string(compass_word(site, out)),
                          shown(step.heap.width), shown(step.heap.height));
  if (!step.into.empty()) words += say(", into {}", trenches_named(step.into));
  return words;
}

}  // namespace underlawn
