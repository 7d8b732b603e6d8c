// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/dig_words.h"

#include <cmath>
#include <numbers>
#include <utility>

#include "base/say.h"
#include "base/wording.h"

namespace underlawn {

std::string compass_word(const Site& site, Point direction) {
  static constexpr std::string_view kWinds[] = {mark("north"),      mark("north-east"), mark("east"),
                                                mark("south-east"), mark("south"),      mark("south-west"),
                                                mark("west"),       mark("north-west")};
  const double bearing = site.north - std::atan2(direction.y, direction.x);
  const double eighths = bearing / (std::numbers::pi / 4);
  const int wind = static_cast<int>(std::lround(eighths)) % 8;
  return translated(kWinds[wind < 0 ? wind + 8 : wind]);
}

std::string way_of_digging(const DigStep& step) {
  if (step.kind == DigKind::trench)
    return step.from_end ? say("from its end back to its head") : say("from its head back to its end");
  if (step.kind == DigKind::run) return step.from_end ? say("toward the house") : say("from the house out");
  return step.from_end ? say("toward the supply run") : say("away from the supply run");
}

std::string trenches_named(const std::vector<int>& numbers) {
  const std::string all = joined_and(numbers);
  return numbers.size() > 1 ? say("trenches {}", all) : say("trench {}", all);
}

std::string spoil_words(const DigStep& step, const Site& site, UnitSystem units) {
  if (!step.no_room.empty()) return say("no room for its spoil");
  if (step.hauled) return say("spoil trucked off");
  const Point along = unit(step.line.back() - step.line.front());
  const Point out = (step.spoil_left ? 1.0 : -1.0) * left_normal(along);
  const auto shown = [&](double m) { return print_quantity(Quantity::length, m, units, Fineness::coarse); };
  const std::string where = compass_word(site, out), wide = shown(step.heap.width),
                    high = shown(step.heap.height);
  return step.into.empty() ? say("spoil to the {}, {} wide and {} high", where, wide, high)
                           : say("spoil to the {}, {} wide and {} high, into {}", where, wide, high,
                                 trenches_named(step.into));
}

std::string step_numeral(int place) {
  static constexpr std::pair<int, const char*> kSigns[] = {
      {100, "C"}, {90, "XC"}, {50, "L"}, {40, "XL"}, {10, "X"}, {9, "IX"}, {5, "V"}, {4, "IV"}, {1, "I"}};
  std::string text;
  for (const auto& [value, sign] : kSigns)
    for (; place >= value; place -= value) text += sign;
  return text;
}

}  // namespace underlawn
