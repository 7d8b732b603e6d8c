// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::run_in_root_zone;
using crafted::keys;

}  // namespace

TEST(RunInRootZone, NamesTheTreeWhoseRootsAreCut) {
  Plan plan = crafted::plan();
  plan.site.root_zone_factor = 18;
  plan.site.features.push_back(crafted::feature(2, FeatureKind::tree, {{25, 43}}));
  plan.site.features.back().trunk_diameter = 0.3;
  const auto found = run_in_root_zone(plan, crafted::two_trenches(plan));
  ASSERT_EQ(keys(found), Keys{"run_in_root_zone/header/feature-2"});
  EXPECT_NEAR(found[0].measured, 4.7, 1e-9);
  EXPECT_NEAR(found[0].required, 5.4, 1e-9);
}

TEST(RunInRootZone, SaysNothingOfATreeFarOff) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(crafted::feature(2, FeatureKind::tree, {{15, 42}}));
  plan.site.features.back().trunk_diameter = 0.3;
  EXPECT_TRUE(run_in_root_zone(plan, crafted::two_trenches(plan)).empty());
}

}  // namespace underlawn
