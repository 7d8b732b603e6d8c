// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/packs.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace underlawn {
namespace {

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
