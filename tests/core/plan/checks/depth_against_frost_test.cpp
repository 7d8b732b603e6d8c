// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::depth_against_frost;
using crafted::keys;

}  // namespace

TEST(DepthAgainstFrost, SaysNothingAtTheFrostLine) {
  Plan plan = crafted::plan();
  plan.ground.frost_depth = 1.2;
  EXPECT_TRUE(depth_against_frost(plan, crafted::two_trenches(plan)).empty());
}

TEST(DepthAgainstFrost, NamesWhatLiesAboveIt) {
  Plan plan = crafted::plan();
  plan.ground.frost_depth = 1.3;
  EXPECT_EQ(keys(depth_against_frost(plan, crafted::two_trenches(plan))), Keys{"depth_against_frost/run"});
  plan.ground.frost_depth = 1.5;
  EXPECT_EQ(keys(depth_against_frost(plan, crafted::two_trenches(plan))),
            (Keys{"depth_against_frost/trenches", "depth_against_frost/run"}));
}

}  // namespace underlawn
