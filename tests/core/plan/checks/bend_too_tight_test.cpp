// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

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

}  // namespace underlawn
