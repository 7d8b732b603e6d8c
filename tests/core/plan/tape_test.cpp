// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/tape.h"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <numbers>

#include "support/random_houses.h"

namespace underlawn {
namespace {

namespace bg = boost::geometry;
using BgPoint = bg::model::d2::point_xy<double>;
using BgPolygon = bg::model::polygon<BgPoint>;

BgPolygon polygon_of(const Ring& ring) {
  BgPolygon polygon;
  for (Point p : ring) bg::append(polygon.outer(), BgPoint(p.x, p.y));
  bg::correct(polygon);
  return polygon;
}

// How deep the tape dips into the house, by walking along it: the judge, which shares nothing with the
// judged.
double depth_inside(const Ring& house, Point a, Point b, int steps) {
  const BgPolygon polygon = polygon_of(house);
  const bg::model::linestring<BgPoint> walls(polygon.outer().begin(), polygon.outer().end());
  double deepest = 0;
  for (int i = 0; i <= steps; ++i) {
    const Point p = a + static_cast<double>(i) / steps * (b - a);
    const BgPoint at(p.x, p.y);
    if (bg::within(at, polygon)) deepest = std::max(deepest, bg::distance(at, walls));
  }
  return deepest;
}

const Ring kBox = {{0, 0}, {10, 0}, {10, 6}, {0, 6}};

}  // namespace

TEST(Tape, PassesBesideAlongAndFromTheCornersOfAHouse) {
  EXPECT_TRUE(tape_is_free({kBox}, {0, 0}, {20, -5}));
  EXPECT_TRUE(tape_is_free({kBox}, {0, 0}, {30, 0}));
  EXPECT_TRUE(tape_is_free({kBox}, {10, 6}, {-5, 6}));
  EXPECT_TRUE(tape_is_free({kBox}, {10, 6}, {12, 20}));
  EXPECT_TRUE(tape_is_free({kBox}, {-5, -5}, {-5, 40}));
}

TEST(Tape, DoesNotPassThroughAHouse) {
  EXPECT_FALSE(tape_is_free({kBox}, {0, 0}, {10, 6}));
  EXPECT_FALSE(tape_is_free({kBox}, {0, 0}, {20, 12}));
  EXPECT_FALSE(tape_is_free({kBox}, {0, 0}, {20, 3}));
  EXPECT_FALSE(tape_is_free({kBox}, {-5, 3}, {15, 3}));
  EXPECT_FALSE(tape_is_free({kBox}, {5, 3}, {5, 30}));
}

TEST(Tape, NorThroughTheOtherHouse) {
  const Ring shed = {{20, -2}, {24, -2}, {24, 2}, {20, 2}};
  EXPECT_TRUE(tape_is_free({kBox}, {10, 0}, {30, 0}));
  EXPECT_FALSE(tape_is_free({kBox, shed}, {10, 0}, {30, 0}));
}

TEST(Tape, AcrossTheNotchOfAnLItIsFree) {
  const Ring l = {{0, 0}, {20, 0}, {20, 8}, {10, 8}, {10, 16}, {0, 16}};
  EXPECT_TRUE(tape_is_free({l}, {20, 8}, {10, 16}));
  EXPECT_TRUE(tape_is_free({l}, {10, 8}, {20, 16}));
  EXPECT_FALSE(tape_is_free({l}, {0, 0}, {20, 16}));
  EXPECT_FALSE(tape_is_free({l}, {0, 16}, {20, 0}));
}

// Between a dip of 1 mm and one of 5 cm either answer is right: a tape bends that much round a corner.
TEST(Tape, AgreesWithWalkingAlongItForRandomHouses) {
  std::mt19937 random(404);
  std::uniform_real_distribution<double> at(-25, 25);
  int blocked = 0, free = 0;
  for (int i = 0; i < 1000; ++i) {
    const Ring house = sample::random_house(random, {0, 0});
    const Point corner = house[random() % house.size()];
    const Point far = {at(random), at(random)};
    const bool is_free = tape_is_free({house}, corner, far);
    if (is_free) {
      EXPECT_LT(depth_inside(house, corner, far, 400), 0.05) << i;
    } else {
      EXPECT_GT(depth_inside(house, corner, far, 20'000), 0.001) << i;
    }
    ++(is_free ? free : blocked);
  }
  EXPECT_GT(blocked, 200);
  EXPECT_GT(free, 200);
}

TEST(Tape, ArcsCutSquareWhereTheCornersLieAtARightAngle) {
  EXPECT_NEAR(cut_angle({0, 0}, {5, 0}, {0, 9}), std::numbers::pi / 2, 1e-12);
  EXPECT_NEAR(cut_angle({0, 0}, {5, 0}, {9, 0}), 0, 1e-12);
  EXPECT_NEAR(cut_angle({0, 0}, {5, 0}, {-9, 0}), 0, 1e-12);
  EXPECT_NEAR(cut_angle({0, 0}, {5, 0}, {-1, 1}), std::numbers::pi / 4, 1e-12);
}

TEST(Tape, PoorCutsAndLongTapesMakeAPointUnsure) {
  const double square = expected_error({0, 0}, {10, 0}, {0, 10});
  EXPECT_NEAR(square, std::sqrt(2.0) * 0.015, 1e-12);
  EXPECT_GT(expected_error({0, 0}, {10, 0}, {9, 4}), square);
  EXPECT_GT(expected_error({0, 0}, {30, 0}, {0, 30}), square);
  EXPECT_TRUE(std::isfinite(expected_error({0, 0}, {10, 0}, {20, 0})));
}

}  // namespace underlawn
