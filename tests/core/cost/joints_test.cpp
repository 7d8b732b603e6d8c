// SPDX-License-Identifier: GPL-3.0-or-later
// Fused joints counted by hand at every place where pipes meet.
#include "cost/joints.h"

#include <gtest/gtest.h>

#include <map>

#include "cost/bill.h"
#include "layout/amounts.h"
#include "plan/solve.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

struct JointsTest : testing::Test {
  // Four circuits in a row, the run comes in at one end, sizes as typed.
  void SetUp() override {
    plan.flow.run_size = "1-1/4 in DR 11";
    plan.flow.header_sizes = {"1-1/4 in DR 11"};
  }
  // Elbows of the run's size: those on the way, two joints each.
  static int on_the_way(const Bill& bill) {
    double elbows = 0;
    for (const BillLine& l : bill.lines)
      if (l.row.starts_with("elbow") && l.row.ends_with(" 1-1/4 in")) elbows += l.needed;
    return static_cast<int>(elbows);
  }
  static double line(const Bill& bill, const std::string& key) {
    for (const BillLine& l : bill.lines)
      if (l.key == key) return l.needed;
    return 0;
  }
  Plan plan = sample::half_acre();
};

}  // namespace

// In each pipe: union to run 1; three places where a tee meets run or header on both sides and, through a
// reducer, a circuit: 4 each; the last where header, reducer, elbow and circuit follow: 3. 16, both pipes 32.
TEST_F(JointsTest, OfADirectHeader) {
  const Outcome o = solve(plan);
  ASSERT_EQ(o.layout.trenches.size(), 4u);
  EXPECT_EQ(o.work->joints, 32 + 2 * on_the_way(*o.bill));
  EXPECT_EQ(joints_of(o.layout), 32);
}

// By place they are as many as in all; with one run in, two tees at every head but the last, an elbow there.
TEST_F(JointsTest, FittingsByPlaceAreThoseCounted) {
  for (const HeaderArrangement how :
       {HeaderArrangement::direct_return, HeaderArrangement::reverse_return, HeaderArrangement::home_runs}) {
    plan.flow.arrangement = how;
    const Outcome o = solve(plan);
    const FittingCount count = count_fittings(o.flow->loop, o.layout, how);
    std::map<std::string, int> by_key;
    for (const FittingAt& f : count.placed) {
      by_key[f.key] += f.count;
      EXPECT_GT(f.count, 0);
      EXPECT_EQ(f.place == FittingPlace::heads, !f.trenches.empty());
      for (int n : f.trenches) EXPECT_TRUE(n >= 1 && n <= 4) << n;
    }
    EXPECT_EQ(by_key, (std::map<std::string, int>(count.fittings.begin(), count.fittings.end())));
  }
  plan.flow.arrangement = HeaderArrangement::direct_return;
  const Outcome o = solve(plan);
  std::map<int, int> tees, elbows;
  for (const FittingAt& f : count_fittings(o.flow->loop, o.layout, plan.flow.arrangement).placed)
    if (f.place == FittingPlace::heads)
      (f.key.starts_with("tee") ? tees : elbows)[f.trenches.front()] +=
          f.key.starts_with("reducer") ? 0 : f.count;
  int with_tees = 0, with_elbows = 0;
  for (const auto& [head, n] : tees) with_tees += n == 2;
  for (const auto& [head, n] : elbows) with_elbows += n == 2;
  EXPECT_EQ(with_tees, 3);
  EXPECT_EQ(with_elbows, 1);
}

// A header of the coils' own size: no reducers there, one in each pipe where the run meets the header's first
// tee. 1 + (3 + 1) + 3 + 3 + 2 = 13 in each.
TEST_F(JointsTest, OfAHeaderOfTheCoilsSize) {
  plan.flow.header_sizes = {"3/4 in DR 11"};
  const Outcome o = solve(plan);
  // The first tee is of the run's size, so header and circuit each leave it by a reducer: 5 there.
  double elbows = 0;
  for (const BillLine& l : o.bill->lines)
    if (l.row.starts_with("elbow")) elbows += l.needed;
  EXPECT_EQ(o.work->joints, 2 * (1 + 5 + 3 + 3 + 2) + 2 * (elbows - 2));
}

// Each pipe: the union, three tees in a row and four reducers in the house, 5 pipes by 7 fittings: 11; an
// elbow between each lead and its circuit: 2 each. 19, both pipes 38.
TEST_F(JointsTest, OfHomeRuns) {
  plan.flow.arrangement = HeaderArrangement::home_runs;
  plan.flow.header_sizes = {"3/4 in DR 11"};
  const Outcome o = solve(plan);
  double small = 0;
  for (const BillLine& l : o.bill->lines)
    if (l.row.starts_with("elbow") && l.row.ends_with(" 3/4 in")) small += l.needed;
  EXPECT_EQ(o.work->joints, 38 + 2 * (small - 8));
}

// Rolls of 500 ft: every coil of 800 ft is joined once, two joints for the coupling.
TEST_F(JointsTest, OfCouplings) {
  const int whole = solve(plan).work->joints;
  PriceRow pipe = row_of(plan.pricing.book, plan.wishes, pipe_key(plan.wishes.pipe));
  pipe.packs = {152.4};
  set_row(plan.pricing.book, plan.wishes, pipe);
  const Outcome o = solve(plan);
  EXPECT_EQ(line(*o.bill, "coupling_3_4_in"), 4);
  EXPECT_EQ(o.work->joints, whole + 8);
}

// Bill, figure and calendar have the same.
TEST_F(JointsTest, AreOneNumber) {
  const Outcome o = solve(plan);
  EXPECT_EQ(line(*o.bill, "joint"), o.work->joints);
  EXPECT_EQ(o.figures.at("layout.joints").value, o.work->joints);
  const double metres = o.layout.header.length + o.layout.run.length;
  EXPECT_NEAR(o.work->time.joining, metres * 30 + o.work->joints * 480.0, 1e-6);
}

TEST_F(JointsTest, OfNothingAreNone) {
  EXPECT_EQ(joints_of(Layout{}), 0);
}

}  // namespace underlawn
