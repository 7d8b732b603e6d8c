// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::circuits_missing;
using crafted::keys;

}  // namespace

TEST(CircuitsMissing, SaysNothingWhenAllArePlaced) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(circuits_missing(plan, crafted::two_trenches(plan)).empty());
}

TEST(CircuitsMissing, NamesTheDearestRestriction) {
  Plan plan = crafted::plan();
  plan.wishes.circuits = 4;
  plan.site.features.push_back(crafted::feature(2, FeatureKind::well, {{10, 90}}));
  plan.site.features.back().name = "Old well";
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.costs = {{{Restriction::Kind::feature, -1, 2}, 2}, {{Restriction::Kind::setback, 0, 0}, 1}};
  const auto found = circuits_missing(plan, outcome);
  ASSERT_EQ(keys(found), Keys{"circuits_missing"});
  EXPECT_EQ(found[0].measured, 2);
  EXPECT_EQ(found[0].required, 4);
  EXPECT_NE(found[0].advice.find("Old well"), std::string::npos);
  EXPECT_NE(found[0].advice.find("2 more trenches"), std::string::npos);
  ASSERT_EQ(found[0].places.size(), 1u);
}

// Room for four, two laid by the prices: nothing to mend.
TEST(CircuitsMissing, OnlyHintsWhereTheMixLeavesCircuitsOut) {
  Plan plan = crafted::plan();
  plan.wishes.circuits = 4;
  plan.wishes.aim = Aim::mix;
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.fits = 4;
  auto found = circuits_missing(plan, outcome);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::hint);
  outcome.layout.fits = 2;
  found = circuits_missing(plan, outcome);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::error);
}

TEST(CircuitsMissing, SaysNothingBeforeThereIsALot) {
  EXPECT_TRUE(circuits_missing(Plan{}, Outcome{}).empty());
}

}  // namespace underlawn
