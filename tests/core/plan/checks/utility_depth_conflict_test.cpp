// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::utility_depth_conflict;
using crafted::keys;

}  // namespace

TEST(UtilityDepthConflict, WantsAFootBetweenCrossingLines) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(crafted::feature(2, FeatureKind::utility, {{0, 30}, {100, 30}}));
  plan.site.features.back().depth = 1.0;
  const auto found = utility_depth_conflict(plan, crafted::two_trenches(plan));
  ASSERT_EQ(keys(found), Keys{"utility_depth_conflict/feature-2"});
  EXPECT_NEAR(found[0].measured, 0.2, 1e-9);
  plan.site.features.back().depth = 0.6;
  EXPECT_TRUE(utility_depth_conflict(plan, crafted::two_trenches(plan)).empty());
}

TEST(UtilityDepthConflict, SaysNothingOfALineThatIsNotCrossed) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(crafted::feature(2, FeatureKind::utility, {{0, 90}, {100, 90}}));
  plan.site.features.back().depth = 1.2;
  EXPECT_TRUE(utility_depth_conflict(plan, crafted::two_trenches(plan)).empty());
}

}  // namespace underlawn
