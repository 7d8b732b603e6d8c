// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using crafted::keys;

Feature line(UtilityKind kind, std::vector<Point> points) {
  Feature f = crafted::feature(9, FeatureKind::utility, std::move(points));
  f.utility = kind;
  return f;
}

std::vector<Finding> said(const Feature& utility) {
  Plan plan = crafted::plan();  // its house lies at x 40 to 60, y 10 to 20
  plan.site.features.push_back(
      crafted::feature(2, FeatureKind::septic_tank, {{80, 80}, {83, 80}, {83, 82}, {80, 82}}));
  plan.site.features.push_back(crafted::feature(3, FeatureKind::well, {{10, 80}}));
  plan.site.features.push_back(utility);
  return checks::utility_through(plan, crafted::two_trenches(plan));
}

}  // namespace

TEST(UtilityThrough, AsksAboutALineThroughTankWellOrHouse) {
  const auto tank = said(line(UtilityKind::gas, {{70, 81}, {95, 81}}));
  ASSERT_EQ(keys(tank), Keys{"utility_through/feature-9/feature-2"});
  EXPECT_NEAR(tank[0].measured, 3, 1e-6);
  EXPECT_EQ(keys(said(line(UtilityKind::water, {{10, 70}, {10, 90}}))),
            Keys{"utility_through/feature-9/feature-3"});
  const auto house = said(line(UtilityKind::electric, {{30, 15}, {70, 15}}));
  ASSERT_EQ(keys(house), Keys{"utility_through/feature-9/feature-1"});
  EXPECT_NEAR(house[0].measured, 20, 1e-6);
}

TEST(UtilityThrough, LeavesServicesAlone) {
  EXPECT_TRUE(said(line(UtilityKind::electric, {{50, 0}, {50, 10.5}})).empty()) << "a step into its house";
  EXPECT_TRUE(said(line(UtilityKind::water, {{10, 80}, {40, 15}})).empty()) << "from the well";
  EXPECT_TRUE(said(line(UtilityKind::sewer, {{60, 15}, {95, 90}})).empty()) << "past the tank";
  EXPECT_TRUE(said(line(UtilityKind::sewer, {{81, 60}, {81, 95}})).empty()) << "through its tank";
  EXPECT_TRUE(said(line(UtilityKind::gas, {{5, 5}, {5, 95}})).empty());
}

}  // namespace underlawn
