// SPDX-License-Identifier: GPL-3.0-or-later
#include "plane/strip.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "plane/region.h"

namespace underlawn {
namespace {

constexpr double kDegree = std::numbers::pi / 180;

Polyline turning(double first, double degrees, double second) {
  return {{0, 0}, {first, 0}, Point{first, 0} + second * direction(degrees * kDegree)};
}

}  // namespace

TEST(Strip, OfAStraightLineIsItsRectangle) {
  EXPECT_EQ(strip_along({{1, 2}, {31, 7}}, 0.9), rectangle_along({{1, 2}, {31, 7}}, 0.9));
  EXPECT_EQ(strip_along({{0, 0}, {10, 0}, {30, 0}}, 0.9), rectangle_along({{0, 0}, {30, 0}}, 0.9));
}

// A mitred corner gives outside what it takes inside: the area is length times width (plain geometry).
TEST(Strip, ThatTurnsHasTheAreaOfItsLengthTimesItsWidth) {
  for (double degrees : {-110.0, -45.0, 5.0, 30.0, 90.0, 115.0}) {
    const Ring strip = strip_along(turning(20, degrees, 10), 1);
    EXPECT_EQ(strip.size(), 6u) << degrees;
    EXPECT_NEAR(area(strip), 30, 1e-9) << degrees;
  }
}

TEST(Strip, BeyondAThirdOfATurnTheCornerIsCutOff) {
  const Ring strip = strip_along(turning(20, 150, 20), 1);
  double farthest = 0;
  for (Point p : strip) farthest = std::max(farthest, p.x);
  EXPECT_LT(farthest, 20 + 1.001) << "no spike";
  EXPECT_TRUE(contains(strip, Point{20.1, 0.1}));
}

// Legs shorter than the corners need: every rectangle along a leg is covered, and little else.
TEST(Strip, OfShortCrookedLegsCoversThemAll) {
  const Polyline line = {{0, 0}, {10, 0}, {10, 0.3}, {10.3, 0.3}, {10.3, 12}};
  const Ring strip = strip_along(line, 1);
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point u = unit(line[i] - line[i - 1]), n = left_normal(u);
    for (double share : {0.01, 0.5, 0.99})
      for (double aside : {-0.49, 0.0, 0.49})
        EXPECT_TRUE(contains(strip, line[i - 1] + share * (line[i] - line[i - 1]) + aside * n));
  }
  EXPECT_LT(area(strip), 24);
  EXPECT_FALSE(contains(strip, Point{5, 0.6}));
}

TEST(Strip, NothingThatIsDrawnBreaksIt) {
  const double nan = std::nan("");
  for (const Polyline& line : std::vector<Polyline>{{{0, 0}, {nan, 1}, {2, 2}},
                                                    {{0, 0}, {1e300, 1}, {2, 2}},
                                                    {{0, 0}, {0, 0}, {0, 0}},
                                                    {{0, 0}, {5, 0}, {5, 0}, {0, 0}},
                                                    {{0, 0}, {5, 0}, {0, 0}},
                                                    {{0, 0}, {5, 0}, {2, 0}, {9, 0}}})
    EXPECT_GE(strip_along(line, 1).size(), 4u);
}

TEST(Strip, TrimmedLinesLoseAndGainLengthAtTheirEnds) {
  const Polyline line = {{0, 0}, {10, 0}, {10, 10}};
  EXPECT_EQ(trimmed(line, 2, 3), (Polyline{{2, 0}, {10, 0}, {10, 7}}));
  EXPECT_EQ(trimmed(line, 12, 3), (Polyline{{10, 2}, {10, 7}}));
  EXPECT_EQ(trimmed(line, -1, -1), (Polyline{{-1, 0}, {10, 0}, {10, 11}}));
}

TEST(Strip, PlacesAlongALineAreFoundLegByLeg) {
  const Polyline line = {{0, 0}, {10, 0}, {10, 10}};
  EXPECT_EQ(place_along(line, 4).at, (Point{4, 0}));
  EXPECT_EQ(place_along(line, 14).at, (Point{10, 4}));
  EXPECT_EQ(place_along(line, 14).leg, 1u);
  EXPECT_NEAR(turn_at(line, 1), std::numbers::pi / 2, 1e-12);
}

}  // namespace underlawn
