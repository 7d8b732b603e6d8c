// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::trench_in_setback;
using crafted::keys;

}  // namespace

TEST(TrenchInSetback, SaysNothingAtExactlyTheSetback) {
  const Plan plan = crafted::plan();
  // Edge of the trench 3 m from the lot line, to the last bit or not.
  EXPECT_TRUE(
      trench_in_setback(plan, crafted::outcome(plan, {crafted::trench(1, {30, 3.5}, {60, 3.5})})).empty());
  EXPECT_TRUE(
      trench_in_setback(plan, crafted::outcome(plan, {crafted::trench(1, {30, 3.4995}, {60, 3.4995})}))
          .empty());
}

TEST(TrenchInSetback, NamesTrenchAndEdgeWithTheDistanceLeft) {
  const Plan plan = crafted::plan();
  const auto found =
      trench_in_setback(plan, crafted::outcome(plan, {crafted::trench(1, {30, 3.0}, {60, 3.0})}));
  ASSERT_EQ(keys(found), Keys{"trench_in_setback/trench-1/edge-1"});
  EXPECT_NEAR(found[0].measured, 2.5, 1e-9);
  EXPECT_NEAR(found[0].required, 3, 1e-9);
}

TEST(TrenchInSetback, EachEdgeHasItsOwn) {
  Plan plan = crafted::plan();
  plan.site.lot[0].setback = 0;
  plan.site.lot[3].setback = 40;
  const auto found =
      trench_in_setback(plan, crafted::outcome(plan, {crafted::trench(1, {30, 3.0}, {60, 3.0})}));
  EXPECT_EQ(keys(found), Keys{"trench_in_setback/trench-1/edge-4"});
}

}  // namespace underlawn
