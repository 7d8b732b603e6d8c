// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/given.h"

#include <gtest/gtest.h>

#include "plan/solve.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

Plan plan_with(std::vector<GivenTrench> given) {
  Plan plan = crafted::plan();
  plan.wishes.given = std::move(given);
  return plan;
}

}  // namespace

TEST(Given, TrenchesOfDifferentLengthAndDirectionAreTakenAsTheyAre) {
  const Outcome o =
      solve(plan_with({{{30, 40}, {60, 40}}, {{30, 50}, {45, 65}, 1.8}, {{70, 40}, {70, 80}, 0, 300}}));
  EXPECT_TRUE(o.layout.troubles.empty());
  ASSERT_EQ(o.layout.trenches.size(), 3u);
  EXPECT_EQ(o.layout.trenches[1].end, (Point{45, 65}));
  EXPECT_EQ(o.layout.trenches[1].depth, 1.8);
  EXPECT_EQ(o.layout.trenches[0].depth, 1.4);
  EXPECT_NEAR(o.layout.trenches[1].coil.pitch, o.coil.pitch, 1e-12);
  EXPECT_NEAR(o.layout.trenches[1].coil.trench_length, std::hypot(15, 15), 1e-9);
  EXPECT_NEAR(o.layout.trenches[2].coil.coil_length, 300, 1e-9);
  EXPECT_FALSE(o.layout.run.line.empty());
  ASSERT_NE(o.temperatures, nullptr);
}

TEST(Given, NeedsNoLotForTheTemperatures) {
  Plan plan = plan_with({{{0, 0}, {40, 0}}});
  plan.site = {};
  plan.wishes.coil_length = 244;
  const Outcome o = solve(plan);
  ASSERT_EQ(o.layout.trenches.size(), 1u);
  ASSERT_NE(o.temperatures, nullptr);
  EXPECT_NEAR(o.temperatures->pipe, o.layout.trenches[0].coil.coil_length, 1e-9);
}

TEST(Given, SaysByNumberWhatCannotBeLaid) {
  const Outcome o = solve(plan_with({{{30, 40}, {60, 40}}, {{30, 50}, {30.2, 50}}}));
  EXPECT_TRUE(o.layout.trenches.empty());
  ASSERT_FALSE(o.layout.troubles.empty());
  EXPECT_EQ(o.layout.troubles[0].thing.rfind("given trench 2, ", 0), 0u) << o.layout.troubles[0].thing;
  EXPECT_EQ(solve(plan_with({{{30, 40}, {60, std::nan("")}}})).layout.troubles.at(0).code, "given_trench");
}

}  // namespace underlawn
