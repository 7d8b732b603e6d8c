// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::run_through_trench;
using crafted::keys;

}  // namespace

TEST(RunThroughTrench, SaysNothingOfAHeaderAlongTheHeads) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(run_through_trench(plan, crafted::two_trenches(plan)).empty());
}

TEST(RunThroughTrench, MeasuresTheStretchInsideTheCoil) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.run.line = {{50, 20}, {50, 50}, {25, 50}};
  const auto found = run_through_trench(plan, outcome);
  ASSERT_EQ(keys(found), (Keys{"run_through_trench/run/trench-1", "run_through_trench/run/trench-2"}));
  EXPECT_NEAR(found[0].measured, 1, 1e-9);
}

TEST(RunThroughTrench, TheSupplyTrenchIsTheRunsOwn) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.trenches[0].role = TrenchRole::supply;
  outcome.layout.run.line = {{50, 20}, {60, 40}, {30, 40}};
  EXPECT_TRUE(run_through_trench(plan, outcome).empty());
}

}  // namespace underlawn
