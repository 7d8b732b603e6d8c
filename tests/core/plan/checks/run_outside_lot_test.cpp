// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::run_outside_lot;
using crafted::keys;

}  // namespace

TEST(RunOutsideLot, SaysNothingOfLinesInside) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(run_outside_lot(plan, crafted::two_trenches(plan)).empty());
}

TEST(RunOutsideLot, CountsTheEdgeOfTheTrench) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.run.line = {{50, 20}, {99.8, 20}, {99.8, 40}, {30, 40}};
  const auto found = run_outside_lot(plan, outcome);
  ASSERT_EQ(keys(found), Keys{"run_outside_lot/run"});
  EXPECT_NEAR(found[0].measured, -0.1, 1e-9);
}

TEST(RunOutsideLot, SeesALineThatLeavesAltogether) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.header.legs = {{{30, 40}, {-5, 42}, {30, 44}}};
  const auto found = run_outside_lot(plan, outcome);
  ASSERT_EQ(keys(found), Keys{"run_outside_lot/header"});
  EXPECT_NEAR(found[0].measured, -5.3, 1e-9);
}

}  // namespace underlawn
