// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/units.h"

#include <gtest/gtest.h>

#include <set>

namespace underlawn {
namespace {

constexpr int kQuantities = static_cast<int>(Quantity::money) + 1;

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return out;
}

}  // namespace

TEST(Units, AreThereForEveryQuantityInBothSystems) {
  for (int i = 0; i < kQuantities; ++i)
    for (UnitSystem system : {UnitSystem::us, UnitSystem::metric}) {
      const auto q = static_cast<Quantity>(i);
      const ShownUnit& unit = bare_unit(q, system);
      EXPECT_EQ(unit.quantity, q);
      EXPECT_EQ(unit.system, system);
      EXPECT_GT(unit.factor, 0);
    }
}

TEST(Units, OfAQuantityMeanOneThingWhateverTheCase) {
  std::set<std::pair<Quantity, std::string>> seen;
  for (const Unit& u : units()) EXPECT_TRUE(seen.insert({u.quantity, lower(u.symbol)}).second) << u.symbol;
}

TEST(Units, ThatAreShownCanBeTypedAndMeanTheSame) {
  for (const ShownUnit& u : shown_units()) {
    const auto value = parse_quantity(u.quantity, "3" + std::string(u.text), u.system);
    ASSERT_TRUE(value.has_value()) << u.text << ": " << value.error().message();
    EXPECT_NEAR(*value, 3 * u.factor + u.offset, 1e-12 * std::abs(*value)) << u.text;
  }
}

TEST(Units, GiveExamplesThatCanBeRead) {
  for (int i = 0; i < kQuantities; ++i) {
    const auto q = static_cast<Quantity>(i);
    std::string examples(quantity_example(q));
    // "a, b or c" is three of them.
    for (std::size_t at; (at = examples.find(" or ")) != std::string::npos;) examples.replace(at, 4, "|");
    for (std::size_t at; (at = examples.find(", ")) != std::string::npos;) examples.replace(at, 2, "|");
    std::istringstream list(examples);
    for (std::string example; std::getline(list, example, '|');)
      EXPECT_TRUE(parse_quantity(q, example, UnitSystem::us).has_value()) << example;
  }
}

TEST(Units, GrowWithTheValue) {
  EXPECT_EQ(shown_unit(Quantity::area, UnitSystem::us, 1000).text, " sq ft");
  EXPECT_EQ(shown_unit(Quantity::area, UnitSystem::us, -10'000).text, " acres");
  EXPECT_EQ(shown_unit(Quantity::area, UnitSystem::metric, 20'000).text, " ha");
  EXPECT_EQ(bare_unit(Quantity::area, UnitSystem::us).text, " sq ft");
}

}  // namespace underlawn
