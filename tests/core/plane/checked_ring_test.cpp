// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "plane/region.h"

using namespace underlawn;

namespace {
std::string code_of(const Ring& ring) {
  const auto r = checked_ring(ring, "Lot line");
  return r ? "" : r.error().code;
}
}  // namespace

TEST(CheckedRing, DropsRepeatedPointsAndCornersOnAStraightSide) {
  const Ring drawn = {{0, 0}, {0, 0}, {5, 0}, {10, 0}, {10, 10}, {10, 10}, {0, 10}, {0, 0}};
  EXPECT_EQ(checked_ring(drawn, "lot").value().size(), 4u);
}

TEST(CheckedRing, TurnsAClockwiseRingOver) {
  const Ring ring = checked_ring({{0, 0}, {0, 10}, {10, 10}, {10, 0}}, "lot").value();
  double twice = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) twice += cross(ring[i], ring[(i + 1) % ring.size()]);
  EXPECT_NEAR(twice, 200, 1e-9);
}

TEST(CheckedRing, RefusesARingThatCrossesItselfAndSaysWhere) {
  const auto r = checked_ring({{0, 0}, {10, 10}, {10, 0}, {0, 10}}, "Lot line");
  ASSERT_FALSE(r);
  EXPECT_NE(r.error().message().find("Lot line"), std::string::npos);
  EXPECT_NE(r.error().message().find("5"), std::string::npos) << r.error().message();
}

TEST(CheckedRing, RefusesABowTieThatMeetsAtACorner) {
  EXPECT_NE(code_of({{0, 0}, {5, 5}, {10, 9}, {10, 0}, {5, 5}, {0, 10}}), "");
}

TEST(CheckedRing, TakesARingThatTouchesItself) {
  // Two squares joined at one corner, drawn round both in one turn.
  EXPECT_EQ(code_of({{0, 0}, {5, 0}, {5, 5}, {10, 5}, {10, 10}, {5, 10}, {5, 5}, {0, 5}}), "");
}

TEST(CheckedRing, RefusesWhatIsNoOutline) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_NE(code_of({}), "");
  EXPECT_NE(code_of({{0, 0}, {1, 0}}), "");
  EXPECT_NE(code_of({{0, 0}, {1, 0}, {2, 0}}), "");
  EXPECT_NE(code_of({{0, 0}, {nan, 0}, {2, 5}}), "");
  EXPECT_NE(code_of({{0, 0}, {1e9, 0}, {2, 5}}), "");
  EXPECT_NE(code_of({{0, 0}, {std::numeric_limits<double>::infinity(), 0}, {2, 5}}), "");
}

TEST(CheckedRing, RefusesAMillionCornersAtOnce) {
  Ring many(1'000'000);
  for (std::size_t i = 0; i < many.size(); ++i)
    many[i] = 100 * direction(6.283 * static_cast<double>(i) / 1e6);
  EXPECT_EQ(code_of(many), "ring_too_many_points");
}

TEST(CheckedRing, NamesTheCornerThatIsNoPlace) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const Trouble t = checked_ring({{0, 0}, {5, 0}, {5, nan}, {0, 5}}, "Drain field").error();
  EXPECT_EQ(t.code, "ring_not_finite");
  EXPECT_NE(t.message().find("Drain field is drawn with corner 3"), std::string::npos) << t.message();
  const Trouble far = checked_ring({{0, 0}, {5, 0}, {5, 12000}}, "Drain field").error();
  EXPECT_NE(far.message().find("12000.00 m"), std::string::npos) << far.message();
  EXPECT_NE(far.message().find("10000 m"), std::string::npos) << far.message();
}

TEST(CheckedRing, TellsFewCornersFromNoArea) {
  EXPECT_EQ(code_of({{0, 0}, {9, 0}, {0, 0}, {9, 0}}), "ring_too_few_points");
  EXPECT_EQ(code_of({{0, 0}, {9, 0}, {5, 0}}), "ring_no_area");
  EXPECT_EQ(code_of({{0, 0}, {9, 0}, {4, 0}, {7, 0}, {2, 0}}), "ring_no_area");
  EXPECT_EQ(code_of({{0, 0}, {1e-5, 0}, {0, 1e-5}}), "ring_too_few_points");
}

TEST(CheckedRing, RefusesCrossingsInACornerAndWindingTwice) {
  // Through a corner on both strands, through a corner of one on the side of the other, twice round, thrice
  // round.
  EXPECT_EQ(code_of({{0, 0}, {5, 5}, {10, 9}, {10, 0}, {5, 5}, {0, 10}}), "ring_crosses_itself");
  EXPECT_EQ(code_of({{0, 0}, {10, 0}, {10, 5}, {5, 0}, {4, -5}, {0, -5}}), "ring_crosses_itself");
  const Ring once = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};
  Ring round = once;
  for (int times = 2; times < 5; ++times) {
    round.insert(round.end(), once.begin(), once.end());
    EXPECT_EQ(code_of(round), "ring_crosses_itself") << times;
  }
}

TEST(CheckedRing, FindsACrossingOfACentimetreOnALargeLot) {
  // Two sides of 400 m that pass through each other near their end by a centimetre.
  EXPECT_EQ(code_of({{0, 0}, {400, 0}, {400, 200}, {399, -0.01}, {398, 200}, {0, 200}}),
            "ring_crosses_itself");
  EXPECT_EQ(code_of({{0, 0}, {400, 0}, {400, 200}, {399, 0}, {398, 200}, {0, 200}}), "");
  EXPECT_EQ(code_of({{0, 0}, {400, 0}, {400, 200}, {399, -0.00005}, {398, 200}, {0, 200}}), "");
}

TEST(CheckedRing, TakesSliversSeamsAndSpikes) {
  EXPECT_EQ(code_of({{0, 0}, {10, 0}, {10, 0.001}, {0, 0.001}}), "");
  EXPECT_EQ(code_of({{0, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 0}, {3, 3}, {3, 7}, {7, 7}, {7, 3}, {3, 3}}),
            "");
  EXPECT_EQ(code_of({{0, 0}, {10, 0}, {10, 5}, {20, 5}, {10, 5}, {10, 10}, {0, 10}}), "");
}

TEST(CheckedRing, TakesTwentyThousandCornersOfACombAndOfACircle) {
  Ring circle, comb = {{0, 50}, {0, 0}};
  for (int i = 0; i < kMostRingPoints; ++i)
    circle.push_back(300 * direction(2 * 3.14159265358979 * i / kMostRingPoints));
  for (int i = 0; i < 9000; ++i) {
    comb.push_back({0.1 * i + 0.05, 40});
    comb.push_back({0.1 * i + 0.1, 0});
  }
  comb.push_back({900, 50});
  EXPECT_EQ(code_of(circle), "");
  EXPECT_EQ(code_of(comb), "");
  comb[9000].y = -80;  // a tooth that reaches below the outline crosses nothing
  EXPECT_EQ(code_of(comb), "");
  comb[1] = {40, -40};  // but now the outline's own side runs through teeth
  EXPECT_EQ(code_of(comb), "ring_crosses_itself");
}

TEST(CheckedRing, KeepsTheAreaOfWhatItCleans) {
  const Ring drawn = {{0, 0}, {3, 0}, {3, 0}, {9, 0}, {9, 3}, {9, 9}, {9.00001, 9}, {4, 9}, {0, 9}, {0, 4}};
  const Ring ring = checked_ring(drawn, "lot").value();
  EXPECT_NEAR(area(ring), 81, 1e-3);
  EXPECT_EQ(ring.size(), 4u);
}
