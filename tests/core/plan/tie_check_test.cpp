// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/tie_check.h"

#include <gtest/gtest.h>

#include "plan/solve.h"
#include "support/sample_plans.h"

namespace underlawn {

TEST(TieCheck, SecondPairIsAnotherPairThatFindsTheSamePoint) {
  const Plan plan = sample::half_acre();
  const Outcome outcome = solve(plan);
  ASSERT_FALSE(outcome.stake_out.ties.empty());
  int found = 0;
  for (const Tie& tie : outcome.stake_out.ties) {
    const auto second = second_tie(plan.site, outcome.stake_out, tie);
    if (!second) continue;
    ++found;
    EXPECT_FALSE((second->first == tie.first && second->second == tie.second) ||
                 (second->first == tie.second && second->second == tie.first));
    EXPECT_GE(second->cut, kLeastCheckCut);
    EXPECT_LT(distance(point_from_tie(outcome.stake_out, *second), tie.at), 1e-6);
  }
  EXPECT_GT(found, 0);
}

// A square house of 10 m with its lower left corner at nought; stakes lie to the north of it.
TEST(TieCheck, BaseLineIsTheWallThatFacesTheStakes) {
  Site site;
  Feature house;
  house.id = 1;
  house.kind = FeatureKind::house;
  house.points = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};
  site.features = {house};
  StakeOut stakes;
  stakes.corners = house_corners(site);
  Tie tie;
  tie.at = {3, 17};
  stakes.ties = {tie};
  const auto base = base_line(site, stakes);
  ASSERT_TRUE(base.has_value());
  EXPECT_DOUBLE_EQ(base->from.at.y, 10);
  EXPECT_DOUBLE_EQ(base->to.at.y, 10);
  const Offset offset = offset_from(*base, tie.at);
  EXPECT_NEAR(std::abs(offset.off), 7, 1e-12);
  EXPECT_NEAR(offset.along, base->from.at.x == 0 ? 3 : 7, 1e-12);
}

TEST(TieCheck, NoHouseNoSecondPair) {
  EXPECT_FALSE(second_tie({}, {}, {}).has_value());
  EXPECT_FALSE(base_line({}, {}).has_value());
}

}  // namespace underlawn
