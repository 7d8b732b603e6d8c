// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::easement_crossed;
using crafted::keys;

}  // namespace

TEST(EasementCrossed, MeasuresTheStretchInside) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(
      crafted::feature(2, FeatureKind::easement, {{20, 28}, {70, 28}, {70, 30}, {20, 30}}));
  const auto found = easement_crossed(plan, crafted::two_trenches(plan));
  ASSERT_EQ(keys(found), Keys{"easement_crossed/run/feature-2"});
  EXPECT_NEAR(found[0].measured, 2 * std::sqrt(2.0), 1e-9);  // the run goes at 45 degrees across 2 m
  EXPECT_EQ(found[0].severity, Severity::warning);
}

TEST(EasementCrossed, SaysNothingOfGroundThatIsNotCrossedOrMayNotBe) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(
      crafted::feature(2, FeatureKind::easement, {{20, 80}, {70, 80}, {70, 90}, {20, 90}}));
  plan.site.features.push_back(
      crafted::feature(3, FeatureKind::easement, {{20, 28}, {70, 28}, {70, 30}, {20, 30}}));
  plan.site.features.back().may_cross = false;  // header_run_clearance speaks of that one
  EXPECT_TRUE(easement_crossed(plan, crafted::two_trenches(plan)).empty());
}

}  // namespace underlawn
