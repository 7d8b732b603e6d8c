// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/snap.h"

#include <gtest/gtest.h>

#include "plan/edits.h"

using namespace underlawn;

namespace {

Plan with_lot(const Ring& ring) {
  return edit::with_lot({}, ring, 3);
}

Plan with_ring(Plan plan, FeatureKind kind, Ring ring) {
  Feature f;
  f.kind = kind;
  f.points = std::move(ring);
  return edit::with_feature(std::move(plan), f);
}

}  // namespace

TEST(Snap, EndComesBeforeMiddleThoughTheMiddleIsNearer) {
  const auto targets = snap_targets(with_lot({{0, 0}, {4, 0}, {4, 40}, {0, 40}}));
  const auto snap = best_snap({.pointer = {1.5, 0.1}, .from = {}, .reach = 1.6}, targets);
  ASSERT_TRUE(snap);
  EXPECT_EQ(snap->kind, SnapKind::end);
  EXPECT_EQ(snap->at, (Point{0, 0}));
}

TEST(Snap, MiddleComesBeforeEdge) {
  const auto targets = snap_targets(with_lot({{0, 0}, {40, 0}, {40, 40}, {0, 40}}));
  const auto snap = best_snap({.pointer = {20.4, 0.1}, .from = {}, .reach = 0.5}, targets);
  ASSERT_TRUE(snap);
  EXPECT_EQ(snap->kind, SnapKind::middle);
  EXPECT_EQ(snap->at, (Point{20, 0}));
}

TEST(Snap, HouseCornerComesBeforeTheEdgeItEnds) {
  const Plan plan = with_ring({}, FeatureKind::house, {{10, 10}, {20, 10}, {20, 18}, {10, 18}});
  const auto snap = best_snap({.pointer = {10.3, 10.0}, .from = {}, .reach = 0.5}, snap_targets(plan));
  ASSERT_TRUE(snap);
  EXPECT_EQ(snap->kind, SnapKind::house_corner);
}

TEST(Snap, FootOfPerpendicularComesBeforeEdge) {
  const auto targets = snap_targets(with_lot({{0, 0}, {40, 0}, {40, 40}, {0, 40}}));
  const auto snap = best_snap({.pointer = {12.2, 0.1}, .from = Point{12, 15}, .reach = 0.5}, targets);
  ASSERT_TRUE(snap);
  EXPECT_EQ(snap->kind, SnapKind::foot);
  EXPECT_EQ(snap->at, (Point{12, 0}));
}

TEST(Snap, SquareToAnEarlierEdgeLiesExactlyAcrossIt) {
  SnapTargets targets;
  add_drawn(targets, {{0, 0}, {3, 4}});
  const auto snap = best_snap({.pointer = {-4.95, 10.1}, .from = Point{3, 4}, .reach = 0.6}, targets);
  ASSERT_TRUE(snap);
  EXPECT_EQ(snap->kind, SnapKind::square);
  EXPECT_NEAR(dot(snap->at - Point{3, 4}, {3, 4}), 0, 1e-9);
}

TEST(Snap, ParallelToALotLineIsFoundAwayFromIt) {
  const auto targets = snap_targets(with_lot({{0, 0}, {40, 10}, {40, 60}, {0, 60}}));
  const auto snap = best_snap({.pointer = {28, 25.1}, .from = Point{8, 20}, .reach = 0.5}, targets);
  ASSERT_TRUE(snap);
  EXPECT_EQ(snap->kind, SnapKind::parallel);
  EXPECT_NEAR(cross(snap->at - Point{8, 20}, {40, 10}), 0, 1e-9);
}

TEST(Snap, ExtensionLeadsBeyondTheEndOfAnEdge) {
  const Plan plan = with_ring({}, FeatureKind::house, {{10, 10}, {20, 10}, {20, 18}, {10, 18}});
  const auto snap =
      best_snap({.pointer = {23, 10.2}, .from = Point{23.5, 31}, .reach = 0.5}, snap_targets(plan));
  ASSERT_TRUE(snap);
  EXPECT_EQ(snap->kind, SnapKind::extension);
  EXPECT_EQ(snap->at, (Point{23, 10}));
}

TEST(Snap, NothingIsCaughtBeyondTheReach) {
  const auto targets = snap_targets(with_lot({{0, 0}, {40, 0}, {40, 40}, {0, 40}}));
  EXPECT_FALSE(best_snap({.pointer = {12, 3}, .from = {}, .reach = 0.5}, targets));
}

TEST(Snap, RepeatedPointsAndNoNumbersDoNoHarm) {
  const double nan = std::nan("");
  const auto targets = snap_targets(with_ring({}, FeatureKind::drive, {{1, 1}, {1, 1}, {5, 1}}));
  EXPECT_FALSE(best_snap({.pointer = {nan, nan}, .from = Point{nan, 0}, .reach = 0.5}, targets));
}
