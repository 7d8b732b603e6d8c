// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/edits.h"

#include <gtest/gtest.h>

#include <limits>

#include "plane/region.h"
#include "support/sample_plans.h"

namespace underlawn::edit {
namespace {

using sample::feet;
using sample::half_acre;
constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInf = std::numeric_limits<double>::infinity();

void expect_near(Point a, Point b) {
  EXPECT_NEAR(a.x, b.x, 1e-9);
  EXPECT_NEAR(a.y, b.y, 1e-9);
}

Feature no_dig(int id = 0) {
  Feature f;
  f.id = id;
  f.kind = FeatureKind::no_dig;
  f.points = sample::box_feet(1, 1, 2, 2);
  return f;
}

}  // namespace

TEST(Edits, ANewFeatureGetsTheNextIdAndIdsStayRising) {
  const Plan plan = half_acre();
  const Plan with = with_feature(plan, no_dig());
  ASSERT_EQ(with.site.features.size(), plan.site.features.size() + 1);
  EXPECT_EQ(with.site.features.back().id, next_feature_id(plan));
  const Plan again = with_feature(without_feature(with, sample::well), no_dig(sample::well));
  for (std::size_t i = 1; i < again.site.features.size(); ++i)
    EXPECT_LT(again.site.features[i - 1].id, again.site.features[i].id);
}

TEST(Edits, AnExistingIdIsReplacedInPlace) {
  const Plan with = with_feature(half_acre(), no_dig(sample::well));
  EXPECT_EQ(with.site.features.size(), half_acre().site.features.size());
  EXPECT_EQ(find_feature(with.site, sample::well)->kind, FeatureKind::no_dig);
}

TEST(Edits, AHouseTakesItsEntryPointAlong) {
  const Plan moved = moved_feature(half_acre(), sample::house, feet(3, 4));
  expect_near(moved.site.entry->at, feet(83, 69));
  EXPECT_FALSE(without_feature(half_acre(), sample::house).site.entry);
}

TEST(Edits, ATurnedHouseTakesItsEntryPointAlong) {
  const Plan turned = rotated_feature(half_acre(), sample::house, 1.5707963267948966, feet(75, 50));
  expect_near(turned.site.entry->at, feet(60, 55));
}

TEST(Edits, ADraggedHouseCornerKeepsTheEntryAtItsShareOfTheWall) {
  // Rear wall runs from (100, 65) to (50, 65); the entry at 80 lies 40 % along it.
  const Plan moved =
      moved_handle(half_acre(), {Handle::Kind::feature_point, sample::house, 2}, feet(110, 75));
  expect_near(moved.site.entry->at, feet(110 - 0.4 * 60, 75 - 0.4 * 10));
}

TEST(Edits, ARemovedHouseCornerLeavesTheEntryOnAWall) {
  const Plan cut = removed_point(half_acre(), {Handle::Kind::feature_point, sample::house, 2});
  const Feature& house = *find_feature(cut.site, sample::house);
  double away = 1e9;
  for (std::size_t i = 0; i < 3; ++i)
    away = std::min(away, distance(Segment{house.points[i], house.points[(i + 1) % 3]}, cut.site.entry->at));
  EXPECT_NEAR(away, 0, 1e-9);
}

TEST(Edits, TheEntryPointSnapsOnTheNearestHouseWall) {
  const Plan plan = with_entry(half_acre(), feet(120, 40));
  EXPECT_EQ(plan.site.entry->house_id, sample::house);
  expect_near(plan.site.entry->at, feet(100, 40));
  const Plan dragged = moved_handle(plan, {Handle::Kind::entry, 0, 0}, feet(60, 20));
  expect_near(dragged.site.entry->at, feet(60, 35));
}

TEST(Edits, NoHouseNoEntryPoint) {
  EXPECT_EQ(with_entry(sample::empty(), feet(1, 1)), sample::empty());
}

TEST(Edits, AHouseThatBecomesSomethingElseLosesItsEntryPoint) {
  EXPECT_FALSE(with_feature(half_acre(), no_dig(sample::house)).site.entry);
}

TEST(Edits, LotCornersMoveGrowAndShrink) {
  const Handle first{Handle::Kind::lot_corner, 0, 0};
  Plan plan = with_setback(half_acre(), 0, 7);
  plan = inserted_point(plan, first, feet(75, -5));
  ASSERT_EQ(plan.site.lot.size(), 5u);
  EXPECT_EQ(plan.site.lot[1].at, feet(75, -5));
  EXPECT_EQ(plan.site.lot[1].setback, 7);
  plan = moved_handle(plan, {Handle::Kind::lot_corner, 0, 1}, feet(70, -6));
  EXPECT_EQ(*handle_position(plan, {Handle::Kind::lot_corner, 0, 1}), feet(70, -6));
  plan = removed_point(removed_point(plan, first), first);
  EXPECT_EQ(plan.site.lot.size(), 3u);
  EXPECT_EQ(removed_point(plan, first), plan);
}

TEST(Edits, MovingTheLotMovesTheLotLineOnly) {
  const Plan moved = moved_lot(half_acre(), feet(1, 2));
  EXPECT_EQ(moved.site.lot[0].at, feet(1, 2));
  EXPECT_EQ(moved.site.features, half_acre().site.features);
  EXPECT_TRUE(without_lot(moved).site.lot.empty());
}

TEST(Edits, AreasKeepThreePointsAndLinesTwo) {
  Plan plan = removed_point(half_acre(), {Handle::Kind::feature_point, sample::reserve, 0});
  EXPECT_EQ(removed_point(plan, {Handle::Kind::feature_point, sample::reserve, 0}), plan);
  EXPECT_EQ(removed_point(plan, {Handle::Kind::feature_point, sample::power, 0}), plan);
  EXPECT_EQ(removed_point(plan, {Handle::Kind::feature_point, sample::oak, 0}), plan);
}

TEST(Edits, ALineTakesAPointOnlyBetweenItsEndsAndAPointFeatureNone) {
  const Plan plan = half_acre();
  EXPECT_EQ(
      find_feature(inserted_point(plan, {Handle::Kind::feature_point, sample::power, 0}, feet(7, 7)).site,
                   sample::power)
          ->points.size(),
      3u);
  EXPECT_EQ(inserted_point(plan, {Handle::Kind::feature_point, sample::power, 1}, feet(7, 7)), plan);
  EXPECT_EQ(inserted_point(plan, {Handle::Kind::feature_point, sample::oak, 0}, feet(7, 7)), plan);
}

TEST(Edits, DeletingAFeatureForgetsWhatWasAcceptedAboutIt) {
  Plan plan = with_acceptance(half_acre(), {"rule/trench-1/feature-1", "a"});
  plan = with_acceptance(plan, {"rule/feature-10", "b"});
  plan = without_feature(plan, 1);
  ASSERT_EQ(plan.accepted.size(), 1u);
  EXPECT_EQ(plan.accepted[0].finding, "rule/feature-10");
}

TEST(Edits, AcceptancesStaySortedAndOneForEachFinding) {
  Plan plan = with_acceptance(sample::empty(), {"b", "second"});
  plan = with_acceptance(plan, {"a", "first"});
  plan = with_acceptance(plan, {"b", "changed"});
  EXPECT_EQ(plan.accepted, (std::vector<Acceptance>{{"a", "first"}, {"b", "changed"}}));
  EXPECT_EQ(with_acceptance(plan, {"c", ""}), plan);
  EXPECT_EQ(without_acceptance(plan, "a").accepted.size(), 1u);
}

TEST(Edits, RulesStaySortedAndOneForEachKind) {
  Plan plan = with_rule(sample::empty(), {FeatureKind::tree, 1, 1});
  plan = with_rule(plan, {FeatureKind::drive, 2, 2});
  plan = with_rule(plan, {FeatureKind::tree, 3, 3});
  EXPECT_EQ(plan.site.rules,
            (std::vector<ClearanceRule>{{FeatureKind::drive, 2, 2}, {FeatureKind::tree, 3, 3}}));
  EXPECT_EQ(without_rule(plan, FeatureKind::tree).site.rules.size(), 1u);
}

TEST(Edits, NonsenseGivesThePlanBack) {
  const Plan plan = half_acre();
  const Handle corner{Handle::Kind::lot_corner, 0, 0};
  Feature bad = no_dig();
  bad.points[1].x = kNan;
  Feature two = no_dig();
  two.points.resize(2);
  Feature negative = no_dig(-3);
  EXPECT_EQ(with_lot(plan, {{0, 0}, {1, 1}}, 1), plan);
  EXPECT_EQ(with_lot(plan, {{0, 0}, {1, 1}, {kInf, 2}}, 1), plan);
  EXPECT_EQ(with_lot(plan, {{0, 0}, {1, 1}, {2, 0}}, -1), plan);
  EXPECT_EQ(with_setback(plan, 4, 1), plan);
  EXPECT_EQ(with_setback(plan, -1, 1), plan);
  EXPECT_EQ(with_setback(plan, 0, kNan), plan);
  EXPECT_EQ(with_feature(plan, bad), plan);
  EXPECT_EQ(with_feature(plan, two), plan);
  EXPECT_EQ(with_feature(plan, negative), plan);
  EXPECT_EQ(without_feature(plan, 99), plan);
  EXPECT_EQ(moved_feature(plan, 99, {1, 1}), plan);
  EXPECT_EQ(moved_feature(plan, sample::oak, {kNan, 1}), plan);
  EXPECT_EQ(moved_feature(plan, sample::oak, {2 * kLargestPlan, 1}), plan);
  EXPECT_EQ(moved_lot(plan, {kInf, 0}), plan);
  EXPECT_EQ(rotated_feature(plan, sample::house, kNan, {0, 0}), plan);
  EXPECT_EQ(moved_handle(plan, corner, {kNan, 0}), plan);
  EXPECT_EQ(moved_handle(plan, {Handle::Kind::lot_corner, 0, 44}, {1, 1}), plan);
  EXPECT_EQ(moved_handle(plan, {Handle::Kind::feature_point, 99, 0}, {1, 1}), plan);
  EXPECT_EQ(inserted_point(plan, {Handle::Kind::entry, 0, 0}, {1, 1}), plan);
  EXPECT_EQ(removed_point(plan, {Handle::Kind::lot_corner, 0, -1}), plan);
  EXPECT_EQ(with_entry(plan, {kNan, kNan}), plan);
  EXPECT_EQ(with_rule(plan, {FeatureKind::tree, -1, 0}), plan);
  EXPECT_FALSE(handle_position(plan, {Handle::Kind::feature_point, sample::oak, 5}));
}

TEST(Edits, NextIdSurvivesTheLargestId) {
  const Plan plan = with_feature(half_acre(), no_dig(std::numeric_limits<int>::max()));
  EXPECT_EQ(with_feature(plan, no_dig()), plan);
}

TEST(Edits, ALockedTrenchIsAddedMovedBentAndTakenAway) {
  const Plan plan = half_acre();
  Plan held = with_locked(plan, {{1, 2}, {31, 2}});
  held = with_locked(held, {{1, 8}, {31, 8}});
  ASSERT_EQ(held.wishes.locked.size(), 2u);
  const Handle head{Handle::Kind::locked_point, 1, 0};
  expect_near(*handle_position(held, head), {1, 8});
  Plan bent = inserted_point(held, head, {15, 9});
  EXPECT_EQ(bent.wishes.locked[1].bends, (std::vector<Point>{{15, 9}}));
  EXPECT_EQ(bent.wishes.locked[0], held.wishes.locked[0]);
  bent = moved_handle(bent, {Handle::Kind::locked_point, 1, 1}, {16, 10});
  EXPECT_EQ(bent.wishes.locked[1].bends[0], (Point{16, 10}));
  bent = moved_handle(bent, {Handle::Kind::locked_point, 1, 2}, {30, 20});
  EXPECT_EQ(bent.wishes.locked[1].end, (Point{30, 20}));
  EXPECT_EQ(removed_point(bent, head).wishes.locked[1].head, (Point{16, 10})) << "its first bend is the head";
  EXPECT_EQ(moved_locked(bent, 1, {1, 1}).wishes.locked[1].bends[0], (Point{17, 11}));
  EXPECT_EQ(without_locked(held, 0).wishes.locked, (std::vector<GivenTrench>{{{1, 8}, {31, 8}}}));
}

TEST(Edits, WhatLeavesNoTrenchGivesThePlanBack) {
  const Plan plan = with_locked(half_acre(), {{1, 2}, {31, 2}});
  EXPECT_EQ(with_locked(plan, {{1, 2}, {1, 2}}), plan);
  EXPECT_EQ(with_locked(plan, {{1, 2}, {kNan, 2}}), plan);
  EXPECT_EQ(with_locked(plan, {{1, 2}, {9, 2}, 0, 0, {{kInf, 2}}}), plan);
  EXPECT_EQ(without_locked(plan, 1), plan);
  EXPECT_EQ(without_locked(plan, -1), plan);
  EXPECT_EQ(removed_point(plan, {Handle::Kind::locked_point, 0, 0}), plan) << "two points at least";
  EXPECT_EQ(moved_locked_handle(plan, 0, 0, {31, 2}), plan) << "onto its end";
  EXPECT_EQ(moved_locked_handle(plan, 0, 2, {3, 3}), plan);
  EXPECT_EQ(moved_locked_handle(plan, 0, 0, {3, kNan}), plan);
  EXPECT_EQ(inserted_point(plan, {Handle::Kind::locked_point, 0, 1}, {40, 40}), plan) << "behind its end";
  EXPECT_EQ(inserted_point(plan, {Handle::Kind::locked_point, 0, -1}, {40, 40}), plan);
  EXPECT_FALSE(handle_position(plan, {Handle::Kind::locked_point, 3, 0}));
}

}  // namespace underlawn::edit
