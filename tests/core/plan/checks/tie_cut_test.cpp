// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::tie_cut;
using crafted::keys;

}  // namespace

TEST(TieCut, SaysNothingOfTapesThatCutWell) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(tie_cut(plan, crafted::two_trenches(plan)).empty());
}

TEST(TieCut, HintsAtAPoorCutAndLeavesHiddenPointsToTheirOwnRule) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.stake_out.ties[0].cut = 0.3;
  outcome.stake_out.ties[1].cut = 0;
  const auto found = tie_cut(plan, outcome);
  ASSERT_EQ(keys(found), Keys{"tie_cut/stakes"});
  EXPECT_EQ(found[0].measured, 0.3);
  EXPECT_EQ(found[0].title, "The tapes cut at a poor angle at stake 1 head");
  EXPECT_EQ(found[0].severity, Severity::hint);
}

}  // namespace underlawn
