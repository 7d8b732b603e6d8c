// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::trench_depth_protection;
using crafted::keys;

}  // namespace

TEST(TrenchDepthProtection, SaysNothingBelowFiveFeet) {
  Plan plan = crafted::plan();
  plan.ground.soil = SoilType::type_c;
  EXPECT_TRUE(trench_depth_protection(plan, crafted::two_trenches(plan)).empty());
}

TEST(TrenchDepthProtection, SpeaksFromFiveFeetOn) {
  Plan plan = crafted::plan();
  plan.ground.soil = SoilType::type_a;
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.trenches[1].depth = 5 * 0.3048;
  plan.wishes.run_depth = 1.6;
  const auto found = trench_depth_protection(plan, outcome);
  ASSERT_EQ(keys(found), (Keys{"trench_depth_protection/trenches", "trench_depth_protection/run"}));
  EXPECT_EQ(found[0].severity, Severity::warning);
  EXPECT_NEAR(found[0].measured, 1.524, 1e-9);
}

TEST(TrenchDepthProtection, StableRockNeedsNone) {
  Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.trenches[1].depth = 2;
  EXPECT_TRUE(trench_depth_protection(plan, outcome).empty());
}

TEST(TrenchDepthProtection, AnEngineerDesignsBeyondTwentyFeetEvenInRock) {
  Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.trenches[1].depth = 20 * 0.3048;
  EXPECT_TRUE(trench_depth_protection(plan, outcome).empty());
  outcome.layout.trenches[1].depth = 6.2;
  const auto found = trench_depth_protection(plan, outcome);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::error);
  EXPECT_NEAR(found[0].required, 6.096, 1e-9);
}

// Of trenches that nobody goes into no finding says how to go in.
TEST(TrenchDepthProtection, SpeaksBySidesAsPlanned) {
  Plan plan = crafted::plan();
  plan.ground.soil = SoilType::type_c;
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.trenches[1].depth = 1.8;
  plan.wishes.run_depth = 1.6;
  plan.dig.coil_sides = Sides::stay_out;
  plan.dig.run_sides = Sides::shield;
  const auto found = trench_depth_protection(plan, outcome);
  ASSERT_EQ(found.size(), 2u);
  EXPECT_NE(found[0].title.find("nobody goes in, at any time"), std::string::npos) << found[0].title;
  EXPECT_EQ(found[0].advice.find("ladder"), std::string::npos) << found[0].advice;
  EXPECT_NE(found[1].advice.find("only inside the shield"), std::string::npos) << found[1].advice;
  plan.units = UnitSystem::metric;
  EXPECT_EQ(trench_depth_protection(plan, outcome)[1].advice.find("ft"), std::string::npos);
}

}  // namespace underlawn
