// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "plane/region.h"

using namespace underlawn;

namespace {
const Ring kSquare = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};
}

TEST(Contains, InsideAndOnTheBoundaryOfARingOfEitherWinding) {
  for (const Ring& ring : {kSquare, Ring(kSquare.rbegin(), kSquare.rend())}) {
    EXPECT_TRUE(contains(ring, Point{5, 5}));
    EXPECT_TRUE(contains(ring, Point{10, 3}));
    EXPECT_TRUE(contains(ring, Point{0, 0}));
    EXPECT_FALSE(contains(ring, Point{10.001, 3}));
  }
}

TEST(Contains, APointOnASlantingEdgeWhateverTheRounding) {
  const Ring slant = {{0, 0}, {7000.1, 3000.3}, {10, 5000}};
  for (double t = 0.01; t < 1; t += 0.07) EXPECT_TRUE(contains(slant, t * slant[1])) << t;
}

TEST(Contains, AHoleIsOutsideButItsEdgeIsNot) {
  const Region holed = {{kSquare, {{{4, 4}, {4, 6}, {6, 6}, {6, 4}}}}};
  EXPECT_FALSE(contains(holed, Point{5, 5}));
  EXPECT_TRUE(contains(holed, Point{4, 5}));
  EXPECT_TRUE(contains(holed, Point{3, 5}));
  EXPECT_FALSE(contains(holed, Segment{{1, 5}, {9, 5}}));
  EXPECT_TRUE(contains(holed, Segment{{4, 1}, {4, 9}}));  // along the hole's edge
  EXPECT_TRUE(contains(holed, Segment{{0, 0}, {10, 0}}));
  EXPECT_FALSE(contains(holed, Segment{{5, 1}, {11, 1}}));
}

TEST(Contains, NothingHoldsAPlaceThatIsNone) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(contains(kSquare, Point{nan, 1}));
  EXPECT_FALSE(contains(Region{{kSquare, {}}}, Segment{{1, 1}, {nan, 1}}));
  EXPECT_FALSE(contains(Ring{}, Point{0, 0}));
  EXPECT_FALSE(contains(Region{}, Point{0, 0}));
}

TEST(Distances, AreThoseOfTheNearestPoints) {
  EXPECT_DOUBLE_EQ(distance(Segment{{0, 0}, {10, 0}}, Point{4, 3}), 3);
  EXPECT_DOUBLE_EQ(distance(Segment{{0, 0}, {10, 0}}, Point{13, 4}), 5);
  EXPECT_DOUBLE_EQ(distance(Segment{{2, 2}, {2, 2}}, Point{5, 6}), 5);
  EXPECT_EQ(distance(Segment{{0, 0}, {10, 10}}, Segment{{0, 10}, {10, 0}}), 0);
  EXPECT_EQ(distance(Segment{{0, 0}, {10, 0}}, Segment{{10, 0}, {12, 5}}), 0);
  EXPECT_DOUBLE_EQ(distance(Segment{{0, 0}, {10, 0}}, Segment{{12, 1}, {12, -1}}), 2);
  EXPECT_DOUBLE_EQ(distance(kSquare, Point{13, 14}), 5);
  EXPECT_EQ(distance(kSquare, Point{3, 3}), 0);
}

TEST(Distances, OfAreasAreNothingWhereOneHoldsTheOther) {
  const Ring inner = {{4, 4}, {6, 4}, {6, 6}, {4, 6}}, off = {{13, 14}, {20, 14}, {20, 20}};
  EXPECT_EQ(area_distance(kSquare, inner), 0);
  EXPECT_EQ(area_distance(inner, kSquare), 0);
  EXPECT_DOUBLE_EQ(area_distance(kSquare, off), 5);
  // A cross: neither holds a corner of the other.
  EXPECT_EQ(area_distance({{-5, 4}, {15, 4}, {15, 6}, {-5, 6}}, kSquare), 0);
  EXPECT_EQ(line_area_distance({{2, 2}, {3, 3}}, kSquare), 0);
  EXPECT_EQ(line_area_distance({{-5, 5}, {15, 5}}, kSquare), 0);
  EXPECT_DOUBLE_EQ(line_area_distance({{13, 14}, {13, 20}}, kSquare), 5);
  EXPECT_DOUBLE_EQ(line_distance({{0, 0}, {5, 0}}, {{0, 2}, {5, 3}}), 2);
  EXPECT_DOUBLE_EQ(line_distance({{0, 0}}, {{3, 4}}), 5);
  EXPECT_TRUE(std::isinf(area_distance({}, kSquare)));
}

TEST(Measures, OfDegenerateRingsAreNumbers) {
  EXPECT_EQ(area(Ring{}), 0);
  EXPECT_EQ(area(Ring{{1, 1}}), 0);
  EXPECT_EQ(perimeter(Ring{}), 0);
  EXPECT_EQ(centroid(Ring{}), Point{});
  EXPECT_EQ(centroid(Ring{{1, 1}, {3, 1}, {5, 1}}), (Point{3, 1}));
  EXPECT_EQ(rectangle_along({{1, 1}, {1, 1}}, 2).size(), 4u);
}

TEST(Measures, CentroidOfAnLIsThatOfItsTwoRectangles) {
  const Ring el = {{0, 0}, {6, 0}, {6, 2}, {2, 2}, {2, 8}, {0, 8}};
  const double a = 6 * 2, b = 2 * 6;
  EXPECT_NEAR(centroid(el).x, (a * 3 + b * 1) / (a + b), 1e-12);
  EXPECT_NEAR(centroid(el).y, (a * 1 + b * 5) / (a + b), 1e-12);
}
