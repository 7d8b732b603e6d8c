// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/header_tree.h"

#include <gtest/gtest.h>

#include "support/flow_layouts.h"

using namespace underlawn;

namespace {

double length_of(const HeaderTree& tree) {
  double sum = 0;
  for (const Tee& t : tree) sum += t.length;
  return sum;
}

int circuits_of(const HeaderTree& tree) {
  int sum = 0;
  for (const Tee& t : tree) sum += static_cast<int>(t.trenches.size());
  return sum;
}

}  // namespace

TEST(HeaderTree, OneLegIsAChainOfTees) {
  const HeaderTree tree = header_tree(hand_layout(0, 4, true)).value();
  ASSERT_EQ(tree.size(), 5u);
  EXPECT_DOUBLE_EQ(tree[0].length, 20);
  EXPECT_EQ(tree[0].feeds, 5);
  for (int i = 1; i < 5; ++i) {
    EXPECT_EQ(tree[i].parent, i - 1);
    EXPECT_NEAR(tree[i].length, 4, 1e-12);
    EXPECT_EQ(tree[i].feeds, 5 - i);
  }
}

TEST(HeaderTree, TwoLegsLeaveTheRunsEndTheFullerFirst) {
  const HeaderTree tree = header_tree(hand_layout(2, 3, false)).value();
  ASSERT_EQ(tree.size(), 6u);
  ASSERT_EQ(tree[0].onward.size(), 2u);
  EXPECT_EQ(tree[tree[0].onward[0]].feeds, 3);
  EXPECT_EQ(tree[tree[0].onward[1]].feeds, 2);
  EXPECT_NEAR(length_of(tree), 20 + 5 * 4, 1e-12);
}

TEST(HeaderTree, LegsOnLegsCornersAndAHeadOnTheRun) {
  Layout l = hand_layout(0, 3, false);
  l.trenches.push_back(hand_trench(4, {-6, 0}, 240));    // in the run's own trench
  l.header.legs.push_back({{0, 8}, {-5, 8}, {-5, 13}});  // from the second head, round a corner
  l.trenches.push_back(hand_trench(5, {-5, 13}, 240));
  l.header.legs.push_back({{0, 2}, {-3, 2}});  // leads nowhere
  const HeaderTree tree = header_tree(l).value();
  EXPECT_EQ(circuits_of(tree), 5);
  EXPECT_NEAR(tree[0].length, 14, 1e-12) << "the run ends where feeding begins";
  EXPECT_EQ(tree[0].trenches, std::vector<int>{3});
  EXPECT_NEAR(length_of(tree), 20 + 12 + 10, 1e-12);
  int corners = 0;
  for (const Tee& t : tree) corners += t.bends_90;
  EXPECT_EQ(corners, 1);
}

TEST(HeaderTree, RefusesWhatIsNotJoined) {
  Layout l = hand_layout(0, 3, false);
  l.trenches[1].head.x += 1.3;
  auto tree = header_tree(l);
  ASSERT_FALSE(tree);
  EXPECT_EQ(tree.error().thing, "head of trench 2");
  l = hand_layout(0, 3, false);
  l.header.legs[0][0].y += 0.5;
  tree = header_tree(l);
  ASSERT_FALSE(tree);
  EXPECT_EQ(tree.error().code, "flow_disconnected");
  l = hand_layout(0, 3, false);
  l.run.line.clear();
  EXPECT_EQ(header_tree(l).error().code, "flow_no_run");
  EXPECT_EQ(header_tree(Layout{}).error().code, "flow_no_circuits");
}
