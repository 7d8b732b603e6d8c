// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::trench_spacing;
using crafted::keys;

}  // namespace

TEST(TrenchSpacing, TakesTheSpacingAskedForAsEnough) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(trench_spacing(plan, crafted::two_trenches(plan)).empty());
}

TEST(TrenchSpacing, MeasuresBetweenMiddleLines) {
  Plan plan = crafted::plan();
  plan.wishes.spacing = 4.5;
  const auto found = trench_spacing(plan, crafted::two_trenches(plan));
  ASSERT_EQ(keys(found), Keys{"trench_spacing/trench-1/trench-2"});
  EXPECT_NEAR(found[0].measured, 4, 1e-9);
  EXPECT_NEAR(found[0].required, 4.5, 1e-9);
}

TEST(TrenchSpacing, EndToEndNeedsOnlyTheGap) {
  const Plan plan = crafted::plan();
  const auto at = [&](double x) {
    return trench_spacing(plan, crafted::outcome(plan, {crafted::trench(1, {10, 40}, {40, 40}),
                                                        crafted::trench(2, {x, 40}, {80, 40})}));
  };
  EXPECT_TRUE(at(42).empty());
  ASSERT_EQ(at(41).size(), 1u);
  EXPECT_NEAR(at(41)[0].measured, 1, 1e-9);
}

TEST(TrenchSpacing, SideAgainstEndNeedsTheGapToo) {
  const Plan plan = crafted::plan();
  const auto found = trench_spacing(plan, crafted::outcome(plan, {crafted::trench(1, {10, 40}, {40, 40}),
                                                                  crafted::trench(2, {42, 20}, {42, 60})}));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0].measured, 1.5, 1e-9);
}

}  // namespace underlawn
