// SPDX-License-Identifier: GPL-3.0-or-later
// What is printed can be typed back: a seeded property over every quantity, system and fineness.
#include <gtest/gtest.h>

#include <random>

#include "base/quantity.h"

namespace underlawn {
namespace {

constexpr int kQuantities = static_cast<int>(Quantity::money) + 1;
constexpr int kValues = 100'000;
constexpr double kInch = 0.0254;

// What the last shown place of `text` is worth in SI: from its decimals and its unit alone.
double last_place(Quantity q, const std::string& text, UnitSystem system, Fineness fineness) {
  if (q == Quantity::length && system == UnitSystem::us)
    return fineness == Fineness::fine ? kInch / 16 : fineness == Fineness::normal ? kInch / 2 : kInch;
  const std::size_t end = text.find_first_not_of("-0123456789.");
  const std::string unit = end == std::string::npos ? "" : text.substr(end);
  const std::string number = text.substr(0, end);
  const std::size_t point = number.find('.');
  const double decimals = point == std::string::npos ? 0 : static_cast<double>(number.size() - point - 1);
  const double one = *parse_quantity(q, "1" + unit, system) - *parse_quantity(q, "0" + unit, system);
  return one * std::pow(10, -decimals);
}

// Sizes from a hair to a county, both signs, and values that sit right on a step.
double random_value(std::mt19937_64& random) {
  const double size = std::pow(10, std::uniform_real_distribution<>(-5, 7)(random));
  const double value = std::uniform_real_distribution<>(-1, 1)(random) * size;
  return random() % 4 == 0 ? std::round(value / (kInch / 32)) * (kInch / 32) : value;
}

}  // namespace

TEST(QuantityRoundTrip, ReadsBackWhatItPrintedWithinHalfTheLastPlace) {
  std::mt19937_64 random(1);
  for (int i = 0; i < kValues; ++i) {
    const auto q = static_cast<Quantity>(random() % kQuantities);
    const auto system = random() % 2 ? UnitSystem::us : UnitSystem::metric;
    const auto fineness = static_cast<Fineness>(random() % 3);
    const double si = random_value(random);
    const std::string text = print_quantity(q, si, system, fineness);
    const auto back = parse_quantity(q, text, system);
    ASSERT_TRUE(back.has_value()) << "seed 1, value " << i << ": " << text;
    const double place = last_place(q, text, system, fineness);
    ASSERT_NEAR(*back, si, place * (0.5 + 1e-6) + std::abs(si) * 1e-14)
        << "seed 1, value " << i << ": " << text << ", quantity " << static_cast<int>(q);
  }
}

TEST(QuantityRoundTrip, PrintsTheSameAgainAfterReading) {
  std::mt19937_64 random(2);
  for (int i = 0; i < kValues; ++i) {
    const auto q = static_cast<Quantity>(random() % kQuantities);
    const auto system = random() % 2 ? UnitSystem::us : UnitSystem::metric;
    const auto fineness = static_cast<Fineness>(random() % 3);
    const std::string text = print_quantity(q, random_value(random), system, fineness);
    const auto back = parse_quantity(q, text, system);
    ASSERT_TRUE(back.has_value()) << "seed 2, value " << i << ": " << text;
    ASSERT_EQ(print_quantity(q, *back, system, fineness), text) << "seed 2, value " << i;
  }
}

TEST(QuantityRoundTrip, NeverShowsTwelveInches) {
  std::mt19937_64 random(3);
  for (int i = 0; i < kValues; ++i) {
    const auto fineness = static_cast<Fineness>(random() % 3);
    const std::string text = print_quantity(Quantity::length, random_value(random), UnitSystem::us, fineness);
    const std::size_t dash = text.rfind('-');
    const std::string inches = dash == std::string::npos ? text : text.substr(dash + 1);
    ASSERT_LT(*parse_quantity(Quantity::length, inches, UnitSystem::us), 12 * kInch - 1e-9) << text;
  }
}

TEST(QuantityRoundTrip, ReadsHugeValuesBack) {
  for (int q = 0; q < kQuantities; ++q)
    for (double si : {1e22, -3e40, 1e300})
      for (UnitSystem system : {UnitSystem::us, UnitSystem::metric}) {
        const std::string text = print_quantity(static_cast<Quantity>(q), si, system);
        const auto back = parse_quantity(static_cast<Quantity>(q), text, system);
        ASSERT_TRUE(back.has_value()) << text << ": " << back.error().message();
        EXPECT_NEAR(*back, si, std::abs(si) * 1e-14) << text;
      }
}

TEST(QuantityRoundTrip, NeverFailsOnRandomText) {
  std::mt19937_64 random(4);
  static const char* pieces[] = {"1", "2", "/",    "'",    "\"",  "ft",      "in", " ", "-",  "+",
                                 "(", ")", "*",    "½",    "1/2", ".",       ",",  "e", "m",  "°",
                                 "F", "′", "\xff", "\xe2", "gpm", "W/(m·K)", ":1", "%", "\0", "999999999999"};
  for (int i = 0; i < kValues; ++i) {
    std::string text;
    for (auto n = random() % 12; n > 0; --n) text += pieces[random() % std::size(pieces)];
    const auto q = static_cast<Quantity>(random() % kQuantities);
    const auto value = parse_quantity(q, text, random() % 2 ? UnitSystem::us : UnitSystem::metric);
    if (value)
      ASSERT_TRUE(std::isfinite(*value)) << text;
    else
      ASSERT_FALSE(value.error().message().empty()) << text;
  }
}

}  // namespace underlawn
