// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::sloped_top_overlap;
using crafted::keys;

}  // namespace

TEST(SlopedTopOverlap, SaysNothingWhereNoSlopeIsDue) {
  Plan plan = crafted::plan();
  plan.dig.coil_sides = Sides::slope;
  EXPECT_TRUE(sloped_top_overlap(plan, crafted::two_trenches(plan)).empty());
  plan.ground.soil = SoilType::type_c;
  EXPECT_TRUE(sloped_top_overlap(plan, crafted::two_trenches(plan)).empty())
      << "1.4 m deep needs no protection";
}

TEST(SlopedTopOverlap, NamesThePairWhoseTopsMeet) {
  Plan plan = crafted::plan();
  plan.dig.coil_sides = Sides::slope;
  plan.ground.soil = SoilType::type_b;
  plan.wishes.trench_depth = 1.6;
  Outcome outcome = crafted::two_trenches(plan);
  for (Trench& t : outcome.layout.trenches) t.depth = 1.6;
  const auto found = sloped_top_overlap(plan, outcome);
  ASSERT_EQ(keys(found), Keys{"sloped_top_overlap/trenches"});
  EXPECT_NEAR(found[0].measured, 4, 1e-9);
  EXPECT_NEAR(found[0].required, 1 + 2 * 1 * 1.6, 1e-9);  // 4.2
  plan.ground.soil = SoilType::type_a;                    // 1 + 2 x 0.75 x 1.6 = 3.4
  EXPECT_TRUE(sloped_top_overlap(plan, outcome).empty());
}

TEST(SlopedTopOverlap, ConcernsNoTrenchInAShield) {
  Plan plan = crafted::plan();
  plan.ground.soil = SoilType::type_c;
  plan.wishes.trench_depth = 2;
  Outcome outcome = crafted::two_trenches(plan);
  for (Trench& t : outcome.layout.trenches) t.depth = 2;
  plan.dig.coil_sides = Sides::slope;
  EXPECT_FALSE(sloped_top_overlap(plan, outcome).empty());
  plan.dig.coil_sides = Sides::shield;
  EXPECT_TRUE(sloped_top_overlap(plan, outcome).empty());
}

TEST(SlopedTopOverlap, KeepsOffLotLineAndHouse) {
  Plan plan = crafted::plan();
  plan.dig.coil_sides = Sides::slope;
  plan.ground.soil = SoilType::type_b;
  plan.wishes.trench_depth = 2;
  const auto at = [&](double y) {
    Outcome outcome = crafted::outcome(plan, {crafted::trench(1, {40, y}, {60, y})});
    outcome.layout.trenches[0].depth = 2;
    return keys(sloped_top_overlap(plan, outcome));
  };
  EXPECT_EQ(at(2), Keys{"sloped_top_overlap/edge-1"});
  EXPECT_EQ(at(21), Keys{"sloped_top_overlap/trench-1/feature-1"});
  EXPECT_EQ(at(50), Keys{});
}

}  // namespace underlawn
