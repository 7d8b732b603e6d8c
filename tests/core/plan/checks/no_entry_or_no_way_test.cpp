// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::no_entry_or_no_way;
using crafted::keys;

}  // namespace

TEST(NoEntryOrNoWay, SaysNothingWhenEveryTrenchIsJoined) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(no_entry_or_no_way(plan, crafted::two_trenches(plan)).empty());
}

TEST(NoEntryOrNoWay, AsksForAnEntryPoint) {
  Plan plan = crafted::plan();
  plan.site.entry.reset();
  EXPECT_EQ(keys(no_entry_or_no_way(plan, crafted::two_trenches(plan))), Keys{"no_entry_or_no_way/entry"});
}

TEST(NoEntryOrNoWay, SaysThatNoWayWasFound) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.run = {};
  EXPECT_EQ(keys(no_entry_or_no_way(plan, outcome)), Keys{"no_entry_or_no_way/way"});
}

TEST(NoEntryOrNoWay, NamesTheTrenchThatIsLeftOut) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.header = {};
  EXPECT_EQ(keys(no_entry_or_no_way(plan, outcome)), Keys{"no_entry_or_no_way/trench-2"});
}

}  // namespace underlawn
