// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/keeping.h"

#include <gtest/gtest.h>

#include "plan/edits.h"
#include "support/sample_plans.h"

namespace underlawn {

namespace {

Layout shown() {
  Layout layout;
  Trench field, supply, locked;
  field.head = {1, 2};
  field.end = {31, 2};
  supply = field;
  supply.role = TrenchRole::supply;
  locked = field;
  locked.locked = true;
  layout.trenches = {field, supply, locked};
  return layout;
}

}  // namespace

TEST(Keeping, WhatIsMovedOnTheLotLeavesTheTrenchesNearWhereTheyLay) {
  const Plan before = sample::half_acre();
  const Plan moved = edit::moved_lot(before, {1, 0});
  const std::vector<Segment> lay = {{{1, 2}, {31, 2}}};
  EXPECT_EQ(keeping(before, moved, shown()).wishes.kept, lay);
}

TEST(Keeping, WhatIsAskedOfTheLoopArrangesAfresh) {
  const Plan before = sample::half_acre();
  Plan after = before;
  after.wishes.circuits = 2;
  EXPECT_EQ(keeping(before, after, shown()), after);
}

TEST(Keeping, AnEditThatSaysWhatIsKeptIsLeftAlone) {
  Plan before = sample::half_acre();
  before.wishes.kept = {{{5, 5}, {9, 5}}};
  Plan afresh = edit::moved_lot(before, {1, 0});
  afresh.wishes.kept.clear();
  EXPECT_TRUE(keeping(before, afresh, shown()).wishes.kept.empty());
}

TEST(Keeping, NothingShownKeepsWhatWasKept) {
  Plan before = sample::half_acre();
  before.wishes.kept = {{{5, 5}, {9, 5}}};
  const Plan moved = edit::moved_lot(before, {1, 0});
  EXPECT_EQ(keeping(before, moved, Layout{}).wishes.kept, before.wishes.kept);
}

}  // namespace underlawn
