// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::trench_in_clearance;
using crafted::keys;

}  // namespace

TEST(TrenchInClearance, KeepsFromAreaLineAndPoint) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(
      crafted::feature(2, FeatureKind::drive, {{30, 47.5}, {60, 47.5}, {60, 50}, {30, 50}}));
  plan.site.features.push_back(crafted::feature(3, FeatureKind::utility, {{0, 36.5}, {100, 36.5}}));
  plan.site.features.push_back(crafted::feature(4, FeatureKind::well, {{63, 40}}));
  EXPECT_TRUE(trench_in_clearance(plan, crafted::two_trenches(plan)).empty());
  plan.site.features[1].trench_clearance = 3.1;
  plan.site.features[2].trench_clearance = 3.1;
  plan.site.features[3].trench_clearance = 3.1;
  EXPECT_EQ(keys(trench_in_clearance(plan, crafted::two_trenches(plan))),
            (Keys{"trench_in_clearance/trench-1/feature-3", "trench_in_clearance/trench-1/feature-4",
                  "trench_in_clearance/trench-2/feature-2"}));
}

TEST(TrenchInClearance, MeasuresFromTheEdgeOfTheTrench) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(crafted::feature(4, FeatureKind::well, {{45, 42.4}}));
  const auto found =
      trench_in_clearance(plan, crafted::outcome(plan, {crafted::trench(1, {30, 40}, {60, 40})}));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0].measured, 1.9, 1e-9);
  EXPECT_EQ(found[0].required, 3);
}

TEST(TrenchInClearance, AZeroClearanceStillForbidsToLieInIt) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(
      crafted::feature(2, FeatureKind::easement, {{40, 35}, {45, 35}, {45, 60}, {40, 60}}));
  plan.site.features.back().trench_clearance = 0;
  EXPECT_EQ(trench_in_clearance(plan, crafted::two_trenches(plan)).size(), 2u);
  plan.site.features.back().points = {{30, 40.5}, {60, 40.5}, {60, 43.5}, {30, 43.5}};
  EXPECT_TRUE(trench_in_clearance(plan, crafted::two_trenches(plan)).empty());
}

TEST(TrenchInClearance, TheRootZoneOfATreeIsTheLeast) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(crafted::feature(2, FeatureKind::tree, {{45, 35}}));
  plan.site.features.back().trunk_diameter = 0.5;
  plan.site.root_zone_factor = 18;
  const auto found =
      trench_in_clearance(plan, crafted::outcome(plan, {crafted::trench(1, {30, 40}, {60, 40})}));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0].required, 9, 1e-9);
  EXPECT_NEAR(found[0].measured, 4.5, 1e-9);
}

}  // namespace underlawn
