// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::run_in_setback;
using crafted::keys;

}  // namespace

TEST(RunInSetback, CountsTheEdgeOfTheTrench) {
  Plan plan = crafted::plan();
  EXPECT_TRUE(run_in_setback(plan, crafted::two_trenches(plan)).empty());
  // The header lies at x = 30, its trench from 29.7.
  plan.site.lot[3].setback = 29.7;
  EXPECT_TRUE(run_in_setback(plan, crafted::two_trenches(plan)).empty());
  plan.site.lot[3].setback = 29.8;
  const auto found = run_in_setback(plan, crafted::two_trenches(plan));
  ASSERT_EQ(keys(found), (Keys{"run_in_setback/run/edge-4", "run_in_setback/header/edge-4"}));
  EXPECT_NEAR(found[1].measured, 29.7, 1e-9);
}

TEST(RunInSetback, SaysNothingWhereThereIsNoLine) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(run_in_setback(plan, Outcome{}).empty());
}

}  // namespace underlawn
