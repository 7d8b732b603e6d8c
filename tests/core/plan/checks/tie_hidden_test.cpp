// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::tie_hidden;
using crafted::keys;

}  // namespace

TEST(TieHidden, SaysNothingOfPointsThatTwoCornersSee) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(tie_hidden(plan, crafted::two_trenches(plan)).empty());
}

TEST(TieHidden, NamesThePointThatIsHidden) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.stake_out.ties[1].point = "1 end, 3 end";
  outcome.stake_out.ties[1].cut = 0;
  const auto found = tie_hidden(plan, outcome);
  ASSERT_EQ(keys(found), Keys{"tie_hidden/stakes"});
  EXPECT_EQ(found[0].title, "No two house corners see stake 1 end, 3 end");
  EXPECT_EQ(found[0].places, (std::vector<Polyline>{{outcome.stake_out.ties[1].at}}));
}

}  // namespace underlawn
