// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/dig.h"

#include <limits>
#include <random>

#include "plane/region.h"

namespace underlawn {
namespace {

Trench trench(Point head, Point end, TrenchRole role = TrenchRole::field) {
  Trench t;
  t.role = role;
  t.head = head;
  t.end = end;
  t.width = 1;
  t.depth = 2;
  return t;
}

Wishes simple_wishes() {
  Wishes w;
  w.run_width = 0.5;
  w.run_depth = 1;
  w.bedding = 0.2;
  return w;
}

DigWishes all_sloped() {
  DigWishes how;
  how.coil_sides = how.run_sides = Sides::slope;
  return how;
}

Layout two_trenches_and_a_run() {
  Layout layout;
  layout.trenches = {trench({10, 0}, {40, 0}), trench({10, 5}, {10, 25})};
  layout.header.length = 5;
  layout.run.line = {{0, 0}, {10, 0}};
  layout.run.length = 10;
  return layout;
}

Ground ground_of(SoilType soil) {
  Ground g;
  g.soil = soil;
  g.swell = 0.3;
  g.shrinkage = 0.1;
  return g;
}

}  // namespace

TEST(Dig, VolumeIsThatOfAFrustumOfThinSlices) {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> lengths(1, 50), widths(0.3, 2), depths(0.5, 3), slopes(0, 1.5);
  for (int i = 0; i < 100; ++i) {
    const double l = lengths(random), w = widths(random), d = depths(random), s = slopes(random);
    double sum = 0;
    for (int slice = 0; slice < 1000; ++slice) sum += l * d / 1000 * (w + 2 * s * d * (slice + 0.5) / 1000);
    EXPECT_NEAR(trench_volume(l, w, d, s), sum, 1e-9 * sum);
  }
}

TEST(Dig, NothingIsDugWithoutLengthOrDepth) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (double bad : {0.0, -1.0, nan}) {
    EXPECT_EQ(trench_volume(bad, 1, 1, 1), 0);
    EXPECT_EQ(trench_volume(1, 1, bad, 1), 0);
  }
  EXPECT_EQ(make_dig(Layout{}, Wishes{}, Ground{}).total, EarthWork{});
}

TEST(Dig, SidesStandVerticalUnlessASlopeIsChosen) {
  DigWishes how;
  for (Sides sides : {Sides::stay_out, Sides::shield, Sides::shoring}) {
    how.coil_sides = how.run_sides = sides;
    const DigPlan plan =
        make_dig(two_trenches_and_a_run(), simple_wishes(), ground_of(SoilType::type_b), {}, how);
    ASSERT_EQ(plan.trenches.size(), 2u);
    EXPECT_DOUBLE_EQ(plan.trenches[0].bank, 30 * 1 * 2);
    EXPECT_DOUBLE_EQ(plan.trenches[1].bank, 20 * 1 * 2);
    EXPECT_DOUBLE_EQ(plan.header.bank, 5 * 0.5 * 1);
    EXPECT_DOUBLE_EQ(plan.run.bank, 10 * 0.5 * 1);
    EXPECT_EQ(plan.coil_slope, 0);
    EXPECT_DOUBLE_EQ(plan.top_width_sloped, 1 + 2 * 1 * 2);
  }
}

TEST(Dig, SidesAreChosenForEachKindOfTrench) {
  DigWishes how;
  how.coil_sides = Sides::slope;
  DigPlan plan = make_dig(two_trenches_and_a_run(), simple_wishes(), ground_of(SoilType::type_b), {}, how);
  EXPECT_DOUBLE_EQ(plan.trenches[0].bank, 30 * 2 * (1 + 2));
  EXPECT_DOUBLE_EQ(plan.header.bank, 5 * 0.5 * 1);
  EXPECT_DOUBLE_EQ(plan.total.bank, (30 + 20) * 2 * (1 + 2) + 15 * 0.5 * 1);
  how.coil_sides = Sides::stay_out;
  how.run_sides = Sides::slope;
  plan = make_dig(two_trenches_and_a_run(), simple_wishes(), ground_of(SoilType::type_b), {}, how);
  EXPECT_DOUBLE_EQ(plan.trenches[0].bank, 30 * 1 * 2);
  EXPECT_DOUBLE_EQ(plan.header.bank, 5 * 1 * (0.5 + 1));
  EXPECT_DOUBLE_EQ(plan.total.bank, (30 + 20) * 1 * 2 + 15 * 1 * (0.5 + 1));
}

TEST(Dig, ASlopeOfOnesOwnGoesBeforeTheTables) {
  DigWishes how = all_sloped();
  how.slope = 0.5;
  const DigPlan plan =
      make_dig(two_trenches_and_a_run(), simple_wishes(), ground_of(SoilType::type_c), {}, how);
  EXPECT_DOUBLE_EQ(plan.trenches[0].bank, 30 * 2 * (1 + 0.5 * 2));
}

TEST(Dig, ASlopeIsDugBelowTheDepthOfTheRuleToo) {
  Layout layout;
  layout.trenches = {trench({0, 0}, {10, 0})};
  layout.trenches[0].depth = 1.2;
  const DigPlan plan = make_dig(layout, simple_wishes(), ground_of(SoilType::type_c), {}, all_sloped());
  EXPECT_DOUBLE_EQ(plan.trenches[0].bank, 10 * 1.2 * (1 + 1.5 * 1.2));
}

TEST(Dig, InStableRockASlopeIsVertical) {
  const auto dug = [](const DigWishes& how) {
    return make_dig(two_trenches_and_a_run(), simple_wishes(), ground_of(SoilType::stable_rock), {}, how);
  };
  EXPECT_EQ(dug({}).total, dug(all_sloped()).total);
  EXPECT_GT(dug({}).total.bank, 0);
}

TEST(Dig, TotalsAreTheSumsOfTheirParts) {
  const DigPlan plan = make_dig(two_trenches_and_a_run(), simple_wishes(), ground_of(SoilType::type_c));
  EXPECT_DOUBLE_EQ(plan.total.length, 30 + 20 + 5 + 10);
  EXPECT_DOUBLE_EQ(plan.total.bank, 60 + 40 + 2.5 + 5);
  EXPECT_DOUBLE_EQ(plan.total.bedding, (30 + 20) * 1 * 0.2 + (5 + 10) * 0.5 * 0.2);
  const DigPlan sloped =
      make_dig(two_trenches_and_a_run(), simple_wishes(), ground_of(SoilType::type_c), {}, all_sloped());
  EXPECT_NEAR(sloped.total.loose, 1.3 * sloped.total.bank, 1e-9);
  EXPECT_NEAR(sloped.total.backfill, sloped.total.bank - sloped.total.bedding, 1e-9);
}

TEST(Dig, BeddingFillsTheCutToItsSides) {
  const Layout layout = two_trenches_and_a_run();
  const Ground ground = ground_of(SoilType::type_b);
  EXPECT_DOUBLE_EQ(make_dig(layout, simple_wishes(), ground).trenches[0].bedding, 30 * 0.2 * 1);
  EXPECT_DOUBLE_EQ(make_dig(layout, simple_wishes(), ground, {}, all_sloped()).trenches[0].bedding,
                   30 * 0.2 * (1 + 0.2));
}

TEST(Dig, BeddingIsNeverMoreThanTheTrench) {
  Wishes wishes = simple_wishes();
  wishes.bedding = 9;
  const DigPlan plan =
      make_dig(two_trenches_and_a_run(), wishes, ground_of(SoilType::type_b), {}, all_sloped());
  EXPECT_EQ(plan.trenches[0].bedding, plan.trenches[0].bank);
  EXPECT_EQ(plan.trenches[0].backfill, 0);
}

TEST(Dig, WhatIsLeftOverIsWhatTheCompactedBackfillDoesNotTake) {
  const DigPlan plan = make_dig(two_trenches_and_a_run(), simple_wishes(), ground_of(SoilType::type_c));
  const EarthWork& w = plan.trenches[0];
  // 60 m3 of bank, 54 m3 to fill; at 10 % shrinkage that takes all 60.
  EXPECT_DOUBLE_EQ(w.backfill, 54);
  EXPECT_NEAR(w.surplus_loose, 0, 1e-9);
}

TEST(Dig, WithoutBeddingShrinkingEarthRunsShort) {
  Wishes wishes = simple_wishes();
  wishes.bedding = 0;
  const DigPlan plan = make_dig(two_trenches_and_a_run(), wishes, ground_of(SoilType::type_c));
  EXPECT_NEAR(plan.trenches[0].surplus_loose, (60 - 60 / 0.9) * 1.3, 1e-9);
  EXPECT_LT(plan.total.surplus_loose, 0);
}

TEST(Dig, TheHeapHoldsTheLooseEarthAtItsAngle) {
  for (const DigWishes& how : {DigWishes{}, all_sloped()}) {
    const DigPlan plan =
        make_dig(two_trenches_and_a_run(), simple_wishes(), ground_of(SoilType::type_c), {}, how);
    const EarthWork& w = plan.trenches[0];
    EXPECT_NEAR(plan.spoil_width * plan.spoil_height / 2 * w.length, w.loose, 1e-9);
    EXPECT_NEAR(std::atan2(plan.spoil_height, plan.spoil_width / 2), Ground{}.repose, 1e-12);
  }
}

TEST(Dig, TheHeapOfTheLargestTrenchIsTheOneToFindRoomFor) {
  Layout layout = two_trenches_and_a_run();
  layout.trenches[1].depth = 3;
  const DigPlan plan = make_dig(layout, simple_wishes(), ground_of(SoilType::type_b), {}, all_sloped());
  const SpoilHeap deeper = spoil_heap(plan.trenches[1].loose, 20, Ground{}.repose);
  EXPECT_EQ(plan.spoil_width, deeper.width);
  EXPECT_EQ(plan.top_width_sloped, 1 + 2 * 3);
}

TEST(Dig, NoHeapWithoutEarthLengthOrAnAngle) {
  EXPECT_EQ(spoil_heap(0, 10, 0.6), SpoilHeap{});
  EXPECT_EQ(spoil_heap(10, 0, 0.6), SpoilHeap{});
  EXPECT_EQ(spoil_heap(10, 10, 0), SpoilHeap{});
  EXPECT_EQ(spoil_heap(10, 10, std::numeric_limits<double>::quiet_NaN()), SpoilHeap{});
}

TEST(Dig, ACoilInTheSupplyTrenchIsCountedOnce) {
  Layout layout = two_trenches_and_a_run();
  layout.run.line = {{0, 0}, {60, 0}, {60, 10}};
  layout.run.length = 70;
  layout.trenches[0] = trench({50, 0}, {20, 0}, TrenchRole::supply);
  const DigPlan plan = make_dig(layout, simple_wishes(), ground_of(SoilType::type_c));
  EXPECT_DOUBLE_EQ(plan.trenches[0].length, 30);
  EXPECT_DOUBLE_EQ(plan.run.length, 40);
}

namespace {

// A coil trench of 30 m by 1 m by 2 m that the run passes through from end to end.
Layout run_over_a_coil() {
  Layout layout;
  layout.run.line = {{0, 0}, {60, 0}};
  layout.run.length = 60;
  layout.trenches = {trench({50, 0}, {20, 0}, TrenchRole::supply)};
  return layout;
}

}  // namespace

// Sand on the floor for the coil, and 0.2 m of it again for the run's pipes, 1 m down: from side to side.
TEST(Dig, TheRunsPipesHaveTheirOwnSandOverACoil) {
  const EarthWork w = make_dig(run_over_a_coil(), simple_wishes(), ground_of(SoilType::type_b)).trenches[0];
  EXPECT_NEAR(w.run_bedding, 30 * 1 * 0.2, 1e-9);
  EXPECT_NEAR(w.bedding, 2 * 30 * 1 * 0.2, 1e-9);
  EXPECT_NEAR(w.under_run, 30 * 1 * (2 - 0.2 - 1), 1e-9);
  EXPECT_NEAR(w.backfill, 60 - 12, 1e-9);
  // At 1:1 the trench is 3 m wide where the run's sand begins and 3.4 m where it ends; 1.4 and 3 m under it.
  const EarthWork sloped =
      make_dig(run_over_a_coil(), simple_wishes(), ground_of(SoilType::type_b), {}, all_sloped()).trenches[0];
  EXPECT_NEAR(sloped.run_bedding, 30 * 0.2 * (3 + 3.4) / 2, 1e-9);
  EXPECT_NEAR(sloped.under_run, 30 * 0.8 * (1.4 + 3) / 2, 1e-9);
  EXPECT_NEAR(sloped.bedding, 30 * 0.2 * (1 + 1.4) / 2 + sloped.run_bedding, 1e-9);
}

// Pipes of a run wished deeper than the coil lie on the coil's sand.
TEST(Dig, TheRunLiesNoDeeperThanTheSandOverTheCoil) {
  Wishes wishes = simple_wishes();
  wishes.run_depth = 3;
  const EarthWork w = make_dig(run_over_a_coil(), wishes, ground_of(SoilType::type_b)).trenches[0];
  EXPECT_NEAR(w.bedding, 2 * 30 * 1 * 0.2, 1e-9);
  EXPECT_EQ(w.under_run, 0);
}

TEST(Dig, WithoutARunOverItACoilHasItsOwnSandOnly) {
  const EarthWork w =
      make_dig(two_trenches_and_a_run(), simple_wishes(), ground_of(SoilType::type_b)).trenches[0];
  EXPECT_EQ(w.run_bedding, 0);
  EXPECT_EQ(w.under_run, 0);
}

// Dug 1.5 m deep at the head and 2.5 m at the end, 1:1: by the prismoid, L/6 (A1 + 4 Am + A2), with sections
// of 1.5 x 2.5, 2 x 3 and 2.5 x 3.5 m2.
TEST(Dig, AFloorThatFallsIsAPrismoid) {
  Layout layout;
  layout.trenches = {trench({0, 0}, {30, 0})};
  layout.trenches[0].fall = 1;
  const DigPlan plan = make_dig(layout, simple_wishes(), ground_of(SoilType::type_b), {}, all_sloped());
  EXPECT_NEAR(plan.trenches[0].bank, 30.0 / 6 * (1.5 * 2.5 + 4 * 2 * 3 + 2.5 * 3.5), 1e-9);
  EXPECT_EQ(plan.floors[0].deepest, 2.5);
  EXPECT_EQ(plan.floors[0].floor_head, -1.5);
  EXPECT_EQ(plan.floors[0].floor_end, -2.5);
}

TEST(Dig, EveryLegIsDugToItsOwnDepth) {
  Layout layout;
  layout.trenches = {trench({100, 0}, {130, 0})};
  layout.header = {{{{0, 0}, {10, 0}}, {{10, 0}, {30, 0}}}, 30, {1, 2}};
  layout.run = {{{-5, 0}, {0, 0}}, 5, 1.4};
  const DigPlan upright = make_dig(layout, simple_wishes(), ground_of(SoilType::type_b));
  EXPECT_NEAR(upright.header.bank, 10 * 0.5 * 1 + 20 * 0.5 * 2, 1e-6);
  EXPECT_NEAR(upright.run.bank, 5 * 0.5 * 1.4, 1e-6);
  const DigPlan sloped = make_dig(layout, simple_wishes(), ground_of(SoilType::type_b), {}, all_sloped());
  EXPECT_NEAR(sloped.header.bank, 10 * 1 * (0.5 + 1) + 20 * 2 * (0.5 + 2), 1e-6);
}

// The head of a coil trench on the middle of the header: 0.25 m by 1 m by 1 m are in both.
TEST(Dig, WhereHeaderAndCoilTrenchMeetEarthIsCountedOnce) {
  Layout layout;
  layout.trenches = {trench({0, 10}, {30, 10})};
  layout.header = {{{{0, 0}, {0, 20}}}, 20};
  const DigPlan plan = make_dig(layout, simple_wishes(), ground_of(SoilType::type_b));
  EXPECT_NEAR(plan.total.bank, 30 * 1 * 2 + 20 * 0.5 * 1 - 0.25, 1e-3);
  EXPECT_NEAR(plan.trenches[0].bank_met, 0.125, 1e-3);
  EXPECT_NEAR(plan.header.bank, 10 - 0.125, 1e-3);
  EXPECT_NEAR(plan.total.loose, 1.3 * plan.total.bank, 1e-9);
  EXPECT_EQ(plan.total.bedding_met, 0);  // the header's sand lies 0.8 m over the coil's
}

// The corner is dug once: floor area by the outline of the strip times depth.
TEST(Dig, ATrenchThatBendsIsAsLongAsItsMiddleLineAndNoCornerIsDugTwice) {
  Layout layout;
  layout.trenches = {trench({0, 0}, {20, 15})};
  layout.trenches[0].bends = {{20, 0}};
  const DigPlan dig = make_dig(layout, simple_wishes(), ground_of(SoilType::type_a));
  EXPECT_NEAR(dig.trenches[0].length, 35, 1e-9);
  EXPECT_NEAR(dig.trenches[0].bank, area(floor_of(layout.trenches[0])) * 2, 1e-9);
}

}  // namespace underlawn
