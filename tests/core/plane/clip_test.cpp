// SPDX-License-Identifier: GPL-3.0-or-later
// Boolean operations on what people draw: edges shared, rings that touch themselves, zones over one another.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <stdexcept>

#include "plane/region.h"

using namespace underlawn;

namespace {

Ring box(double x, double y, double wide, double high) {
  return {{x, y}, {x + wide, y}, {x + wide, y + high}, {x, y + high}};
}

Region boxes(const std::vector<Ring>& rings) {
  std::vector<Region> parts;
  for (const Ring& r : rings) parts.push_back(region_of(r));
  return unite(parts);
}

double signed_area(const Ring& r) {
  double twice = 0;
  for (std::size_t i = 0; i < r.size(); ++i) twice += cross(r[i], r[(i + 1) % r.size()]);
  return twice / 2;
}

}  // namespace

TEST(Clip, ObstaclesFlushWithEachOtherAndWithTheLotAreAllTakenOff) {
  const Region lot = region_of(box(0, 0, 30, 20));
  // Two share an edge, one lies along the lot line, one shares a corner, one is drawn twice.
  const Region taken =
      boxes({box(5, 5, 5, 5), box(10, 5, 5, 5), box(20, 0, 4, 3), box(15, 10, 2, 2), box(5, 5, 5, 5)});
  EXPECT_NEAR(area(taken), 25 + 25 + 12 + 4, 1e-9);
  EXPECT_NEAR(area(subtract(lot, taken)), 600 - 66, 1e-9);
  EXPECT_NEAR(area(intersect(lot, taken)), 66, 1e-9);
}

TEST(Clip, ALotCutInTwoIsTwoPolygonsWithTheirOwnHoles) {
  const Region lot = region_of(box(0, 0, 30, 20));
  const Region left =
      subtract(lot, boxes({box(14, -1, 2, 22), box(3, 3, 4, 4), box(20, 5, 5, 5), box(21, 12, 2, 2)}));
  ASSERT_EQ(left.size(), 2u);
  EXPECT_EQ(left[0].holes.size() + left[1].holes.size(), 3u);
  for (const Polygon& p : left) {
    EXPECT_GT(signed_area(p.outer), 0);
    for (const Ring& hole : p.holes) {
      EXPECT_LT(signed_area(hole), 0);
      for (Point corner : hole) EXPECT_TRUE(contains(p.outer, corner));
    }
  }
  EXPECT_NEAR(area(left), 600 - 40 - 16 - 25 - 4, 1e-9);
}

TEST(Clip, AnIslandInAHoleKeepsBoth) {
  const Region ring = subtract(region_of(box(0, 0, 20, 20)), region_of(box(5, 5, 10, 10)));
  const Region both = unite({ring, region_of(box(8, 8, 4, 4))});
  ASSERT_EQ(both.size(), 2u);
  EXPECT_NEAR(area(both), 400 - 100 + 16, 1e-9);
  EXPECT_FALSE(contains(both, Point{6, 6}));
  EXPECT_TRUE(contains(both, Point{10, 10}));
}

TEST(Clip, ARingThatTouchesItselfKeepsItsArea) {
  // Two squares joined at a corner; and a square with a slit along which the outline runs in and out again.
  EXPECT_NEAR(area(region_of({{0, 0}, {5, 0}, {5, 5}, {10, 5}, {10, 10}, {5, 10}, {5, 5}, {0, 5}})), 50,
              1e-9);
  EXPECT_NEAR(area(region_of({{0, 0}, {10, 0}, {10, 5}, {4, 5}, {10, 5}, {10, 10}, {0, 10}})), 100, 1e-9);
  // A square ring, drawn as one outline with a seam.
  EXPECT_NEAR(
      area(region_of({{0, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 0}, {3, 3}, {3, 7}, {7, 7}, {7, 3}, {3, 3}})),
      84, 1e-9);
}

TEST(Clip, EitherWindingIsTheSameRegion) {
  const Ring drawn = {{0, 0}, {12, 1}, {9, 7}, {2, 6}};
  EXPECT_NEAR(area(region_of(drawn)), area(region_of(Ring(drawn.rbegin(), drawn.rend()))), 1e-12);
}

TEST(Clip, CoordinatesOnTheGridComeBackAsTheyWent) {
  const Ring drawn = {{0.1, 0.2}, {30.48, 0.3048}, {12.34567, 15.00001}};
  const Region region = region_of(drawn);
  for (Point p : region[0].outer)
    EXPECT_NE(std::find(drawn.begin(), drawn.end(), p), drawn.end()) << p.x << " " << p.y;
}

TEST(Clip, NothingFromNothingIsNothing) {
  const Region lot = region_of(box(0, 0, 3, 3));
  EXPECT_TRUE(unite({}).empty());
  EXPECT_TRUE(subtract({}, lot).empty());
  EXPECT_TRUE(intersect(lot, {}).empty());
  EXPECT_NEAR(area(subtract(lot, {})), 9, 1e-12);
  EXPECT_TRUE(subtract(lot, lot).empty());
  EXPECT_TRUE(region_of({}).empty());
  EXPECT_TRUE(region_of({{1, 1}, {2, 2}}).empty());
}

TEST(Clip, WhatRoundingLeavesAlongASharedEdgeIsNotGround) {
  // The same slanting edge with corners of its own on either side.
  const Region lot = region_of({{0, 0}, {30, 7}, {30, 20}, {0, 20}});
  const Region zone =
      region_of({{0, 0}, {7.7, 7.7 * 7 / 30}, {19.1, 19.1 * 7 / 30}, {30, 7}, {30, 20}, {0, 20}});
  const Region left = subtract(lot, zone);
  EXPECT_LT(area(left), 1e-3);
  for (const Polygon& p : left) EXPECT_GT(area(p.outer), kGrid * perimeter(p.outer));
}

TEST(Clip, APlaceThatIsNoneIsRefusedAndNotDropped) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW(region_of({{0, 0}, {nan, 0}, {1, 1}}), std::invalid_argument);
  EXPECT_THROW(region_of({{0, 0}, {1e300, 0}, {1, 1}}), std::invalid_argument);
  EXPECT_THROW(grown(region_of(box(0, 0, 1, 1)), nan), std::invalid_argument);
  EXPECT_THROW(buffered(Point{0, 0}, nan), std::invalid_argument);
}

TEST(Clip, WhatIsTakenOffAndWhatIsLeftAreTheWholeLot) {
  std::mt19937 random(11);
  const auto whole = [&random](int most) {
    return static_cast<double>(random() % static_cast<unsigned>(most));
  };
  for (int i = 0; i < 500; ++i) {
    std::vector<Ring> rings;
    for (int k = 0; k < 12; ++k) {
      const Point c{whole(40), whole(40)}, size{1 + whole(9), 1 + whole(9)};
      if (k % 3 == 0)
        rings.push_back({c, {c.x + size.x, c.y}, {c.x, c.y + size.y}});
      else
        rings.push_back(box(c.x, c.y, size.x, size.y));
    }
    const Region lot = region_of({{0, 0}, {40, 0}, {40, 25}, {25, 40}, {0, 40}}), taken = boxes(rings);
    const Region left = subtract(lot, taken), in = intersect(lot, taken);
    EXPECT_NEAR(area(left) + area(in), area(lot), 1e-2) << i;
    EXPECT_LT(area(intersect(left, taken)), 1e-2) << i;
    EXPECT_NEAR(area(unite({left, in})), area(lot), 1e-2) << i;
  }
}
