// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::utility_crossing;
using crafted::keys;

}  // namespace

TEST(UtilityCrossing, MarksEachPlaceToDigByHand) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(crafted::feature(2, FeatureKind::utility, {{0, 30}, {100, 30}}));
  const auto found = utility_crossing(plan, crafted::two_trenches(plan));
  ASSERT_EQ(keys(found), Keys{"utility_crossing/run/feature-2"});
  EXPECT_EQ(found[0].severity, Severity::warning);
  EXPECT_EQ(found[0].measured, 0);
  EXPECT_NEAR(found[0].required, 0.4572, 1e-9);  // 18 in
  ASSERT_EQ(found[0].places.size(), 1u);
  // The run goes from (50, 20) to (30, 40).
  EXPECT_NEAR(found[0].places[0][0].x, 40, 1e-9);
  EXPECT_NEAR(found[0].places[0][0].y, 30, 1e-9);
}

TEST(UtilityCrossing, SeesALineThatOnlyPassesClose) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(crafted::feature(2, FeatureKind::utility, {{29.5, 30}, {29.5, 100}}));
  const auto found = utility_crossing(plan, crafted::two_trenches(plan));
  ASSERT_EQ(found.size(), 2u);
  EXPECT_NEAR(found[0].measured, 0.2, 1e-9);
}

TEST(UtilityCrossing, SaysNothingOfALineFarOff) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(crafted::feature(2, FeatureKind::utility, {{29.2, 30}, {29.2, 100}}));
  EXPECT_TRUE(utility_crossing(plan, crafted::two_trenches(plan)).empty());
}

}  // namespace underlawn
