// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/fewer_bends.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace underlawn;

namespace {

// A line round a quarter of a circle about the origin: up along x = -radius, round, right along y = radius.
Polyline round_corner(double radius) {
  Polyline line = {{-radius, -20}};
  for (int i = 0; i <= 6; ++i) {
    const double a = 3.14159265358979 - i * 3.14159265358979 / 12;
    line.push_back({radius * std::cos(a), radius * std::sin(a)});
  }
  line.push_back({20, radius});
  return line;
}

Region ground_with(const Ring& obstacle) {
  return subtract(region_of(Ring{{-30, -30}, {30, -30}, {30, 30}, {-30, 30}}), region_of(obstacle));
}

}  // namespace

TEST(FewerBends, AStringOfShortLegsBecomesOneCorner) {
  const Region free = ground_with({{0, 0}, {20, -1}, {20, -20}, {0, -20}});
  const Polyline line = with_fewer_bends(round_corner(3), Sight(free));
  ASSERT_EQ(line.size(), 3u);
  EXPECT_NEAR(line[1].x, -3, 1e-9);
  EXPECT_NEAR(line[1].y, 3, 1e-9);
  EXPECT_EQ(line.front(), (Point{-3, -20}));
  EXPECT_EQ(line.back(), (Point{20, 3}));
}

TEST(FewerBends, TakesTwoCornersWhereOneWouldMeetAnObstacle) {
  const Region free = ground_with({{-3.2, 2.6}, {-2.6, 2.6}, {-2.6, 3.2}, {-3.2, 3.2}});
  const Polyline line = with_fewer_bends(round_corner(3), Sight(free));
  EXPECT_EQ(line.size(), 4u);
  EXPECT_TRUE(Sight(free).sees(line[1], line[2]));
}

TEST(FewerBends, LeavesLongLegsAlone) {
  const Polyline line = {{0, 0}, {10, 0}, {14, 6}, {14, 20}};
  EXPECT_EQ(with_fewer_bends(line, Sight(region_of(Ring{{-30, -30}, {30, -30}, {30, 30}, {-30, 30}}))), line);
}
