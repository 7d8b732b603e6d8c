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
