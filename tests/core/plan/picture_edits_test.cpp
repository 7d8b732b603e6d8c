// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/picture_edits.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace underlawn {

namespace {

// Where a place of the picture (0..1 across and up) lies on the plan.
Point on_plan(const Picture& p, double across, double up) {
  return p.at + rotated({across * p.width, up * p.height}, p.turn);
}

Picture some() {
  Picture p;
  p.at = {3, -2};
  p.width = 40;
  p.height = 25;
  p.turn = 0.4;
  return p;
}

}  // namespace

TEST(PictureEdits, ScalingLaysTwoPlacesTheirDistanceApartAndMovesNotTheFirst) {
  const Picture before = some();
  const Point a = on_plan(before, 0.2, 0.3), b = on_plan(before, 0.9, 0.8);
  const auto after = scaled(before, a, b, 61.5);
  ASSERT_TRUE(after.has_value());
  EXPECT_NEAR(distance(on_plan(*after, 0.2, 0.3), a), 0, 1e-9);
  EXPECT_NEAR(distance(on_plan(*after, 0.2, 0.3), on_plan(*after, 0.9, 0.8)), 61.5, 1e-9);
  EXPECT_FALSE(scaled(before, a, a, 10).has_value());
  EXPECT_FALSE(scaled(before, a, b, 0).has_value());
  EXPECT_FALSE(scaled(before, a, b, 1e9).has_value());
}

TEST(PictureEdits, TurningGivesALineItsBearing) {
  constexpr double kNorth = 1.2;
  const Picture before = some();
  const Point a = on_plan(before, 0.1, 0.1), b = on_plan(before, 0.1, 0.9);
  for (double bearing : {0.0, 0.7, 3.0, -1.0}) {
    const auto after = aligned(before, a, b, bearing, kNorth);
    ASSERT_TRUE(after.has_value());
    const Point way = on_plan(*after, 0.1, 0.9) - on_plan(*after, 0.1, 0.1);
    EXPECT_NEAR(std::remainder(std::atan2(way.y, way.x) - (kNorth - bearing), 2 * std::numbers::pi), 0, 1e-9);
    EXPECT_NEAR(distance(on_plan(*after, 0.1, 0.1), a), 0, 1e-9);
    EXPECT_NEAR(norm(way), distance(a, b), 1e-9);
  }
}

TEST(PictureEdits, WhatAPlanCannotHoldGivesItBack) {
  const Plan plan = edit::with_new_picture({}, some());
  ASSERT_EQ(plan.pictures.size(), 1u);
  Picture bad = some();
  bad.width = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(edit::with_picture(plan, 0, bad), plan);
  EXPECT_EQ(edit::with_picture(plan, 1, some()), plan);
  EXPECT_EQ(edit::without_picture(plan, -1), plan);
  Plan full = plan;
  for (int i = 0; i < 30; ++i) full = edit::with_new_picture(full, some());
  EXPECT_EQ(full.pictures.size(), static_cast<std::size_t>(kMostPictures));
  Picture large = some();
  large.data = SharedText(std::string(kMostPictureText + 1, 'A'));
  EXPECT_EQ(edit::with_new_picture(plan, large), plan);
}

// A plan and its history hold a stored picture once.
TEST(PictureEdits, CopiesShareWhatIsStored) {
  Picture p = some();
  p.data = SharedText(std::string(1'000'000, 'A'));
  const Plan plan = edit::with_new_picture({}, p);
  const Plan copy = plan;
  EXPECT_EQ(copy.pictures[0].data.text().data(), plan.pictures[0].data.text().data());
  EXPECT_EQ(SharedText("ab"), SharedText("ab"));
  EXPECT_FALSE(SharedText("ab") == SharedText("ac"));
}

}  // namespace underlawn
