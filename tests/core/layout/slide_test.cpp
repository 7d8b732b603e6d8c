// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/slide.h"

#include <gtest/gtest.h>

#include "core/layout/push_lot.h"
#include "layout/legality.h"

namespace underlawn {
namespace {

using pushed::kStart;
using pushed::square;
using pushed::wishes;

Feature feature(int id, FeatureKind kind, std::vector<Point> points, double clearance) {
  Feature f;
  f.id = id;
  f.kind = kind;
  f.points = std::move(points);
  f.trench_clearance = clearance;
  return f;
}

GivenTrench moved(const GivenTrench& t, Point by) {
  return {t.head + by, t.end + by};
}

void expect_at(const GivenTrench& t, Point head, Point end, double within = 1e-3) {
  EXPECT_NEAR(t.head.x, head.x, within);
  EXPECT_NEAR(t.head.y, head.y, within);
  EXPECT_NEAR(t.end.x, end.x, within);
  EXPECT_NEAR(t.end.y, end.y, within);
}

TEST(Slide, GoesAllTheWayWhereNothingIsInTheWay) {
  EXPECT_EQ(slid(square(), wishes(), {}, kStart, moved(kStart, {5, 7})), moved(kStart, {5, 7}));
}

// Half a width and the setback from the edge at y = 60.
TEST(Slide, StopsAtTheSetbackToAMillimetre) {
  expect_at(slid(square(), wishes(), {}, kStart, moved(kStart, {0, 40})), {20, 56.5}, {40, 56.5});
}

// As the search places them: flush with what they keep off.
TEST(Slide, AnEndOfATrenchThatTouchesItsSetbackIsFreeToMove) {
  const GivenTrench flush{{3, 3.5}, {23, 3.5}};
  expect_at(slid(square(), wishes(), {}, flush, {{3, 3.5}, {18, 3.5}}), {3, 3.5}, {18, 3.5});
  expect_at(slid(square(), wishes(), {}, flush, {{3, 3.5}, {80, 3.5}}), {3, 3.5}, {57, 3.5}, 2e-3);
}

// Along the edge to where the pointer is, and into the corner where that is beyond it.
TEST(Slide, GoesOnAlongWhatStopsIt) {
  expect_at(slid(square(), wishes(), {}, kStart, moved(kStart, {9, 40})), {29, 56.5}, {49, 56.5}, 2e-3);
  expect_at(slid(square(), wishes(), {}, kStart, moved(kStart, {90, 90})), {37, 56.5}, {57, 56.5}, 2e-3);
}

TEST(Slide, OneEndGrowsToTheClearanceOfAWell) {
  Site s = square();
  s.features.push_back(feature(1, FeatureKind::well, {{50, 30}}, 5));
  const GivenTrench t = slid(s, wishes(), {}, kStart, {{20, 30}, {49, 30}});
  expect_at(t, {20, 30}, {45, 30});
}

// The end follows the lot edge x = 60 - 3 upwards when the pointer leaves the lot.
TEST(Slide, OneEndSlidesAlongTheEdgeWhileTheOtherStays) {
  const GivenTrench t = slid(square(), wishes(), {}, kStart, {{20, 30}, {75, 40}});
  EXPECT_EQ(t.head, kStart.head);
  EXPECT_GT(t.end.x, 56);
  EXPECT_GT(t.end.y, 38);
  EXPECT_TRUE(trench_is_legal(square(), {t.head, t.end}, 1));
}

TEST(Slide, KeepsTheSpacingToLockedTrenchesAndNotToOthers) {
  Trench other;
  other.head = {20, 40};
  other.end = {40, 40};
  other.width = 1;
  EXPECT_EQ(slid(square(), wishes(), {other}, kStart, moved(kStart, {0, 9})), moved(kStart, {0, 9}));
  other.locked = true;
  expect_at(slid(square(), wishes(), {other}, kStart, moved(kStart, {0, 9})), {20, 36}, {40, 36});
  // End to end the floors keep the gap at ends: 40 + 2.
  expect_at(slid(square(), wishes(), {other}, {{43, 40}, {53, 40}}, {{36, 40}, {46, 40}}), {42, 40},
            {52, 40});
}

TEST(Slide, StaysOffTheGroundBeyondAClosedWall) {
  Site s = square();
  s.features.push_back(feature(1, FeatureKind::house, {{20, 40}, {40, 40}, {40, 50}, {20, 50}}, 1));
  Wishes w = wishes();
  w.closed = {{1, 1}};  // x = 40
  const GivenTrench from{{10, 20}, {30, 20}};
  expect_at(slid(s, w, {}, from, moved(from, {20, 0})), {20, 20}, {40, 20});
}

TEST(Slide, ATrenchThatBreaksARuleAlreadyIsNotHeld) {
  const GivenTrench outside{{-10, 30}, {10, 30}};
  EXPECT_EQ(slid(square(), wishes(), {}, outside, moved(outside, {2, 0})), moved(outside, {2, 0}));
}

TEST(Slide, WhatIsNoPlaceMovesNothing) {
  EXPECT_EQ(slid(square(), wishes(), {}, kStart, {{std::nan(""), 0}, {1, 1}}), kStart);
  EXPECT_EQ(slid(square(), wishes(), {}, kStart, {{20, 30}, {20, 30}}), kStart);
}

// Legs that lean 5 in 20: the floor's corner stands out 0.5 / cos(atan(5 / 20)) = 0.5154 m beyond the bend.
TEST(Slide, TheCornerOfABentTrenchStopsAtTheSetback) {
  const GivenTrench bent{{45, 10}, {45, 50}, 0, 0, {{50, 30}}};
  const GivenTrench to{{65, 10}, {65, 50}, 0, 0, {{70, 30}}};
  const GivenTrench there = slid(square(), wishes(), {}, bent, to);
  ASSERT_EQ(there.bends.size(), 1u);
  EXPECT_LE(there.bends[0].x + 0.51539, 57 + 1e-3);
  EXPECT_GE(there.bends[0].x + 0.51539, 57 - 0.01);
}

TEST(Slide, BendsGoWithTheTrench) {
  const GivenTrench from{{20, 30}, {40, 40}, 0, 0, {{30, 30}}};
  const GivenTrench to{{20, 60}, {40, 70}, 0, 0, {{30, 60}}};
  const GivenTrench t = slid(square(), wishes(), {}, from, to);
  ASSERT_EQ(t.bends.size(), 1u);
  EXPECT_NEAR(t.bends[0].y - t.head.y, 0, 1e-9);
  EXPECT_NEAR(t.end.y - t.head.y, 10, 1e-9);
  EXPECT_GT(t.head.y, 44);
}

}  // namespace
}  // namespace underlawn
