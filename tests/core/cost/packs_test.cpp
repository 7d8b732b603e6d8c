// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/packs.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace underlawn {
namespace {

// All at one price.
std::vector<Pack> packs_of(const std::vector<double>& amounts) {
  std::vector<Pack> packs;
  for (double amount : amounts) packs.push_back({amount, 1});
  return packs;
}
Bought buy(double needed, const std::vector<double>& packs) {
  return underlawn::buy(needed, packs_of(packs));
}
Bought cut(const std::vector<double>& pieces, const std::vector<double>& packs) {
  return underlawn::cut(pieces, packs_of(packs));
}

double sum(const Bought& b) {
  double amount = 0;
  for (const PackCount& p : b.packs) amount += p.pack * p.count;
  return amount;
}

// Every count of every size up to what one size alone would take.
double least_by_trying(double needed, const std::vector<double>& packs, std::size_t at = 0) {
  if (needed <= 1e-9) return 0;
  if (at == packs.size()) return 1e18;
  double best = 1e18;
  for (int n = 0; n <= static_cast<int>(std::ceil(needed / packs[at])); ++n)
    best = std::min(best, n * packs[at] + least_by_trying(needed - n * packs[at], packs, at + 1));
  return best;
}

TEST(Packs, BuysTheLeastThatIsEnough) {
  EXPECT_EQ(buy(730, {300, 500, 600, 1000}).packs, (std::vector<PackCount>{{500, 1}, {300, 1}}));
  EXPECT_EQ(buy(55, {5, 55}).packs, (std::vector<PackCount>{{55, 1}}));
  EXPECT_EQ(buy(100, {100}).packs, (std::vector<PackCount>{{100, 1}}));
  EXPECT_EQ(buy(0.1 + 0.2, {0.3}).packs, (std::vector<PackCount>{{0.3, 1}}));  // no pack for a rounding
  EXPECT_EQ(buy(12.5, {}).amount, 12.5);
  EXPECT_EQ(buy(0, {5}).amount, 0);
  EXPECT_EQ(buy(std::nan(""), {5}).amount, 0);
}

TEST(Packs, NoCombinationIsLess) {
  std::mt19937 random(7);
  for (int i = 0; i < 300; ++i) {
    std::vector<double> packs;
    for (int n = 1 + static_cast<int>(random() % 3); n > 0; --n) packs.push_back(50.0 + random() % 300);
    const double needed = 1.0 + random() % 1500;
    const Bought b = buy(needed, packs);
    EXPECT_NEAR(sum(b), b.amount, 1e-9);
    EXPECT_GE(b.amount, needed - 1e-6);
    EXPECT_NEAR(b.amount, least_by_trying(needed, packs), 1e-6) << needed;
  }
}

TEST(Packs, PiecesComeWholeOutOfOneRoll) {
  // Two of 240 fit a roll of 500, four of 240 two of them; by their sum 960 one of 1000 would do.
  EXPECT_EQ(cut({240, 240, 240, 240}, {500}).packs, (std::vector<PackCount>{{500, 2}}));
  EXPECT_EQ(cut({240, 240, 240, 240}, {300, 1000}).packs, (std::vector<PackCount>{{1000, 1}}));
  // 800 fit only the long roll, which holds 180 of the rest.
  const Bought mixed = cut({800, 180, 250}, {300, 500, 1000});
  EXPECT_EQ(mixed.packs, (std::vector<PackCount>{{1000, 1}, {300, 1}}));
  EXPECT_EQ(mixed.joins, 0);
}

// A drum of 55 at 1 is cheaper than six of 5 at 2, though it holds more.
TEST(Packs, TheCheapestIsNotAlwaysTheLeast) {
  const Bought b = underlawn::buy(28, {{5, 2}, {55, 1}});
  EXPECT_EQ(b.packs, (std::vector<PackCount>{{55, 1}}));
  EXPECT_EQ(b.paid, 55);
  EXPECT_EQ(underlawn::buy(28, {{5, 1}, {55, 1}}).paid, 30);
  // What costs nothing is still not more than it has to be.
  EXPECT_EQ(underlawn::buy(26, {{5, 0}, {25, 0}, {50, 0}}).packs, (std::vector<PackCount>{{25, 1}, {5, 1}}));
}

// Feet. Four coils of 804 and 70 of header. 1000 at 1 holds one coil; cut to length at 1.25 a coil is 1005.
// The header comes out of what is left.
TEST(Cutting, ACoilIsCutToLengthWhereThatIsCheaper) {
  const std::vector<double> pieces = {804, 804, 804, 804, 40, 30};
  const Bought rolls = underlawn::cut(pieces, {{0, 1.25}, {500, 1}, {1000, 1}});
  EXPECT_EQ(rolls.packs, (std::vector<PackCount>{{1000, 4}}));
  EXPECT_EQ(rolls.paid, 4000);
  // At 1.2 a coil is 964.80 cut to length: three of them, and one roll for the fourth and the header.
  const Bought mixed = underlawn::cut(pieces, {{0, 1.2}, {500, 1}, {1000, 1}});
  EXPECT_EQ(mixed.packs, (std::vector<PackCount>{{1000, 1}, {0, 3}}));
  EXPECT_NEAR(mixed.paid, 1000 + 3 * 804 * 1.2, 1e-9);
  ASSERT_EQ(mixed.rolls.size(), 4u);
  EXPECT_EQ(mixed.rolls[0].pieces.size(), 3u);
  EXPECT_NEAR(mixed.rolls[0].left, 1000 - 874, 1e-9);
  EXPECT_TRUE(mixed.rolls[1].to_length);
  EXPECT_EQ(mixed.rolls[1].left, 0);
}

// Twelve feet of header are not a roll of 300.
TEST(Cutting, AFewMetresAreCutToLength) {
  const Bought b = underlawn::cut({8, 4}, {{0, 1.25}, {300, 1}});
  EXPECT_EQ(b.packs, (std::vector<PackCount>{{0, 2}}));
  EXPECT_NEAR(b.paid, 15, 1e-12);
}

// 30 in all fill three rolls of 10: 6+4, 5+3+2, 4+3+3. Longest first, each into the fullest roll that holds
// it, the second set takes four, 5+5, 4+4, 3+3+3 and 3; by hand 5+5, 4+3+3, 4+3+3.
TEST(Cutting, IsExactWhereTheQuickWayIsNot) {
  EXPECT_EQ(cut({6, 5, 4, 4, 3, 3, 3, 2}, {10}).packs, (std::vector<PackCount>{{10, 3}}));
  EXPECT_EQ(cut({5, 5, 4, 4, 3, 3, 3, 3}, {10}).packs, (std::vector<PackCount>{{10, 3}}));
}

// Rolls of 10 at 1 and of 6 at 0.9: 5 and 5 come cheaper out of one of 10 than of two of 6 (10.80); 6 and 5
// out of two of 6 than of one of 10 and one of 6.
TEST(Cutting, TakesTheCheapestSetOfSizes) {
  const std::vector<Pack> packs = {{10, 1}, {6, 0.9}};
  EXPECT_EQ(underlawn::cut({5, 5}, packs).packs, (std::vector<PackCount>{{10, 1}}));
  EXPECT_EQ(underlawn::cut({6, 5}, packs).packs, (std::vector<PackCount>{{6, 2}}));
}

// Every way to share the pieces out.
double cheapest_by_trying(const std::vector<double>& pieces, const std::vector<Pack>& packs,
                          std::vector<std::vector<double>> bins = {}, std::size_t at = 0) {
  if (at == pieces.size()) {
    double sum = 0;
    for (const auto& bin : bins) {
      double length = 0, best = 1e18;
      for (double piece : bin) length += piece;
      for (const Pack& p : packs)
        if (p.amount >= length - 1e-9) best = std::min(best, p.amount * p.price);
      for (const Pack& p : packs)
        if (p.amount == 0 && bin.size() == 1) best = std::min(best, length * p.price);
      sum += best;
    }
    return sum;
  }
  double best = 1e18;
  for (std::size_t i = 0; i <= bins.size(); ++i) {
    auto next = bins;
    if (i == bins.size()) next.emplace_back();
    next[i].push_back(pieces[at]);
    best = std::min(best, cheapest_by_trying(pieces, packs, next, at + 1));
  }
  return best;
}

TEST(Cutting, NoWayIsCheaper) {
  std::mt19937 random(41);
  for (int i = 0; i < 150; ++i) {
    std::vector<Pack> packs = {{100.0, 1}};
    for (int n = static_cast<int>(random() % 3); n > 0; --n)
      packs.push_back({20.0 + random() % 60, 0.8 + (random() % 50) / 100.0});
    if (random() % 2) packs.push_back({0, 1 + (random() % 60) / 100.0});
    std::vector<double> pieces;
    for (int n = 1 + static_cast<int>(random() % 7); n > 0; --n) pieces.push_back(5.0 + random() % 80);
    const Bought b = underlawn::cut(pieces, packs);
    EXPECT_NEAR(b.paid, cheapest_by_trying(pieces, packs), 1e-6) << i;
    EXPECT_EQ(b, underlawn::cut(pieces, packs));
    // Every piece comes out of one roll, and no roll gives more than it holds.
    std::vector<int> cut_of(pieces.size());
    for (const Roll& roll : b.rolls) {
      double used = 0;
      for (int piece : roll.pieces) {
        ++cut_of[static_cast<std::size_t>(piece)];
        used += pieces[static_cast<std::size_t>(piece)];
      }
      EXPECT_NEAR(roll.length, used + roll.left, 1e-9);
      EXPECT_GE(roll.left, 0);
    }
    EXPECT_EQ(cut_of, std::vector<int>(pieces.size(), 1));
  }
}

TEST(Packs, WhatIsLongerThanTheLongestIsJoined) {
  const Bought b = cut({1300, 1300}, {500, 1000});
  EXPECT_EQ(b.joins, 2);
  EXPECT_EQ(b.cut_short, 2);
  EXPECT_GE(b.amount, 2600);
}

TEST(Packs, OddNumbersEndSoon) {
  EXPECT_GT(buy(1e300, {1e-3}).amount, 0);
  EXPECT_GE(cut(std::vector<double>(3000, 1.0), {1e-3}).amount, 3000 * (1 - 1e-6));
  EXPECT_GE(buy(997, {97, 89, 83, 79, 73, 71, 67, 61, 59, 53, 47, 43}).amount, 997);
}

}  // namespace
}  // namespace underlawn
