// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <numbers>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::bend_too_tight;
using crafted::keys;

}  // namespace

// 3/4 in DR 11 pipe is 1.050 in (26.67 mm) across; 25 diameters is a radius of 0.667 m.
TEST(BendTooTight, SaysNothingOfLoopsThatMayBeBentCold) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.coil.loop_diameter = 2 * 25 * 0.02667;
  EXPECT_TRUE(bend_too_tight(plan, outcome).empty());
}

TEST(BendTooTight, HintsAtLoopsThatOnlyCoiledPipeTakes) {
  const Plan plan = crafted::plan();
  const auto found = bend_too_tight(plan, crafted::two_trenches(plan));
  ASSERT_EQ(keys(found), Keys{"bend_too_tight/coil"});
  EXPECT_EQ(found[0].severity, Severity::hint);
  EXPECT_NEAR(found[0].measured, 0.9, 1e-9);
  EXPECT_NEAR(found[0].required, 1.3335, 1e-4);
}

TEST(BendTooTight, CallsLoopsThatKinkAnError) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.coil.loop_diameter = 0.45;
  const auto found = bend_too_tight(plan, outcome);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::error);
  EXPECT_NEAR(found[0].required, 19 * 0.02667, 1e-4);
}

namespace {

Outcome bent_by(double degrees, CoilPattern pattern, double width = 1) {
  Trench t = crafted::trench(1, {30, 40}, {0, 0});
  const double turn = degrees * std::numbers::pi / 180;
  t.bends = {{45, 40}};
  t.end = Point{45, 40} + 15.0 * direction(turn);
  t.width = width;
  t.coil.pattern = pattern;
  t.coil.loop_diameter = 1.4;  // may be bent cold
  return crafted::outcome(crafted::plan(), {t});
}

bool too_tight(double degrees, CoilPattern pattern, double width = 1) {
  const auto found = bend_too_tight(crafted::plan(), bent_by(degrees, pattern, width));
  return keys(found) == Keys{"bend_too_tight/trench-1/bend-1"};
}

}  // namespace

// Loops 1.4 m across, 0.4 m apart, of pipe 26.67 mm: 0.4 cos(a/2) - 1.4 sin(a/2) is 4 x 26.67 mm at 23.5 deg.
TEST(BendTooTight, LoopsThatCloseOnTheInsideOfACorner) {
  EXPECT_FALSE(too_tight(23, CoilPattern::flat_coil));
  EXPECT_TRUE(too_tight(24, CoilPattern::flat_coil));
  EXPECT_TRUE(too_tight(-24, CoilPattern::flat_coil));
}

// 0.7 sin(a/2) = 0.1524 - 2 x 0.02667 at 16.3 degrees.
TEST(BendTooTight, StandingLoopsTakeTheRoomBetweenTheWalls) {
  EXPECT_FALSE(too_tight(16, CoilPattern::upright_coil, 0.1524));
  EXPECT_TRUE(too_tight(17, CoilPattern::upright_coil, 0.1524));
  EXPECT_FALSE(too_tight(60, CoilPattern::upright_coil, 0.6096));
}

// One pipe with 0.1257 m to move in: an arc of 0.667 m turns 1 - cos(a/2) = 0.1257/0.667, a = 71.5 degrees.
TEST(BendTooTight, StraightPipeIsBentAsFarAsTheTrenchLetsIt) {
  EXPECT_FALSE(too_tight(71, CoilPattern::single_pipe, 0.1524));
  EXPECT_TRUE(too_tight(72, CoilPattern::single_pipe, 0.1524));
}

TEST(BendTooTight, BendsCloserThanALoopAreOne) {
  Outcome o = bent_by(0, CoilPattern::flat_coil);
  Trench& t = o.layout.trenches[0];
  t.bends = {{45, 40}, {45.29, 40.08}};  // 15 degrees each, 0.3 m apart
  t.end = Point{45.29, 40.08} + 15.0 * direction(std::numbers::pi / 6);
  EXPECT_EQ(keys(bend_too_tight(crafted::plan(), o)), Keys{"bend_too_tight/trench-1/bend-1"});
  t.bends[1] = {49.83, 41.29};  // 5 m apart
  t.end = Point{49.83, 41.29} + 15.0 * direction(std::numbers::pi / 6);
  EXPECT_TRUE(bend_too_tight(crafted::plan(), o).empty());
}

}  // namespace underlawn
