// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/checks/measure.h"

#include <gtest/gtest.h>

#include "support/crafted.h"

namespace underlawn {
namespace {

const Ring kSquare = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};

}  // namespace

TEST(Measure, AMillimetreIsNoShortfall) {
  EXPECT_FALSE(falls_short(0.3, 0.3));
  EXPECT_FALSE(falls_short(0.1 + 0.2 - 1e-12, 0.3));
  EXPECT_FALSE(falls_short(0.2991, 0.3));
  EXPECT_TRUE(falls_short(0.2989, 0.3));
}

TEST(Measure, LengthInsideCountsTheStretchesInsideOnly) {
  EXPECT_NEAR(length_inside({{-5, 5}, {15, 5}}, kSquare), 10, 1e-9);
  EXPECT_NEAR(length_inside({{5, 5}, {5, 20}, {8, 20}, {8, 7}}, kSquare), 8, 1e-9);
  EXPECT_EQ(length_inside({{-5, 0}, {15, 0}}, kSquare), 0) << "along the edge";
  EXPECT_EQ(length_inside({{-5, -5}, {15, -5}}, kSquare), 0);
  EXPECT_NEAR(length_inside({{2, 2}, {8, 2}}, kSquare), 6, 1e-9) << "wholly inside";
}

TEST(Measure, MeetingsGiveEachPlaceOnce) {
  EXPECT_EQ(meetings({{0, 0}, {10, 0}}, {{5, -5}, {5, 5}}), (std::vector<Point>{{5, 0}}));
  EXPECT_EQ(meetings({{0, 0}, {5, 0}, {10, 0}}, {{5, -5}, {5, 5}}).size(), 1u)
      << "through a corner of the line";
  EXPECT_TRUE(meetings({{0, 0}, {10, 0}}, {{0, 1}, {10, 1}}).empty());
  EXPECT_EQ(meetings({{0, 0}, {10, 0}}, {{4, 0}, {20, 0}}).size(), 2u) << "both ends of a common stretch";
}

TEST(Measure, SideBySideNeedsTheSameWayAndACommonStretch) {
  const Trench a = crafted::trench(1, {0, 0}, {30, 0});
  EXPECT_NEAR(gaps_between(a, crafted::trench(2, {50, 4}, {25, 4})).beside.value(), 4, 1e-9);
  EXPECT_FALSE(gaps_between(a, crafted::trench(2, {30, 4}, {60, 4})).beside);
  EXPECT_FALSE(gaps_between(a, crafted::trench(2, {10, 4}, {10, 34})).beside);
}

TEST(Measure, OfTrenchesThatBendEveryLegCounts) {
  Trench bent = crafted::trench(1, {0, 0}, {30, 20});
  bent.bends = {{30, 0}};
  const Gaps gaps = gaps_between(bent, crafted::trench(2, {33, 2}, {33, 12}));
  EXPECT_NEAR(gaps.beside.value(), 3, 1e-9) << "beside its second leg";
  EXPECT_NEAR(gaps.at_ends.value(), std::hypot(2.5, 1.5), 1e-9) << "off the end of its first";
  EXPECT_FALSE(gaps_between(bent, crafted::trench(2, {0, 30}, {0, 60})).beside) << "beside neither";
}

TEST(Measure, ListsNamesWhileTheyFitALine) {
  EXPECT_EQ(trenches_listed({"2"}), "trench 2");
  EXPECT_EQ(trenches_listed({"2", "3"}), "trenches 2, 3");
  EXPECT_EQ(trenches_listed({"1", "2", "3", "4", "5", "6", "7"}), "7 trenches");
}

TEST(Measure, KeysOfTiesHoldNoBlanks) {
  Tie tie;
  tie.key = "1 end, 3 end";
  EXPECT_EQ(tie_part(tie), "1-end+3-end");
}

}  // namespace underlawn
