// SPDX-License-Identifier: GPL-3.0-or-later
// Floors on ground that is not level, against volumes worked out by hand.
#include <gtest/gtest.h>

#include "dig/dig.h"
#include "layout/amounts.h"

using namespace underlawn;

namespace {

// 1 m up in 10 m along x, level along y.
Terrain hillside() {
  return Terrain({{{-50, -50}, -5}, {{50, -50}, 5}, {{50, 50}, 5}, {{-50, 50}, -5}});
}

Trench trench(Point head, Point end) {
  Trench t;
  t.number = 1;
  t.head = head;
  t.end = end;
  t.width = 1;
  t.depth = 2;
  return t;
}

}  // namespace

TEST(LevelFloor, UphillItIsDugDeeperBothWaysRound) {
  for (bool up : {true, false}) {
    const Trench t = up ? trench({0, 0}, {20, 0}) : trench({20, 0}, {0, 0});
    const FloorLevel f = floor_level(t, hillside(), true);
    EXPECT_NEAR(f.floor_head, -2, 1e-9);
    EXPECT_NEAR(f.floor_end, -2, 1e-9);
    EXPECT_NEAR(f.deepest, 4, 1e-9);
    EXPECT_NEAR(f.mean_depth, 3, 1e-9);
    // A prism of trapezoids 2 to 4 m deep: 20 x 3 x 1 with vertical sides = 60 m3; with 1:1 sides also
    // integral of d^2 = 20 (2^2 + 2 x 4 + 4^2)/3 = 186.667 m3.
    EXPECT_NEAR(trench_volume(20, 1, f, 0), 60, 1e-9);
    EXPECT_NEAR(trench_volume(20, 1, f, 1), 60 + 560.0 / 3, 1e-9);
    EXPECT_NEAR(f.along_slope, 20 * std::hypot(1, 0.1), 1e-9);
  }
}

TEST(LevelFloor, AlongTheContourItIsNoDeeperThanAsked) {
  const FloorLevel f = floor_level(trench({4, 0}, {4, 20}), hillside(), true);
  EXPECT_NEAR(f.deepest, 2, 1e-9);
  EXPECT_NEAR(trench_volume(20, 1, f, 0), 40, 1e-9);
  EXPECT_NEAR(dug_for_level_floor(hillside(), {{4, 0}, {4, 20}}, 1), 0, 1e-9);
  EXPECT_NEAR(dug_for_level_floor(hillside(), {{0, 0}, {20, 0}}, 1), 20, 1e-9);
}

TEST(LevelFloor, AFloorThatFollowsTheGroundIsDugAsOnLevelGround) {
  const FloorLevel f = floor_level(trench({0, 0}, {20, 0}), hillside(), false);
  EXPECT_NEAR(f.floor_end - f.floor_head, 2, 1e-9);
  EXPECT_NEAR(trench_volume(20, 1, f, 1.5), trench_volume(20, 1, 2, 1.5), 1e-12);
}
