// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/coil_ends.h"

#include <gtest/gtest.h>

#include <numbers>

#include "cost/bill.h"
#include "plan/solve.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

// Coils of 800 ft (243.84 m) in trenches 6 ft (1.8288 m) deep; header 5 ft deep; tails of 0.6 m.
constexpr double kCoil = 243.84, kDeep = 1.8288, kTail = 0.6;

// Sizes typed, so that they do not follow the head.
Plan half_acre() {
  Plan plan = sample::half_acre();
  plan.flow.run_size = "1-1/4 in DR 11";
  plan.flow.header_sizes = {"1-1/4 in DR 11"};
  return plan;
}

Plan nobody_goes_down() {
  Plan plan = half_acre();
  plan.dig.coil_sides = plan.dig.run_sides = Sides::stay_out;
  return plan;
}

double in_network(const Outcome& o, int trench) {
  double length = 0;
  for (std::size_t i = 0; i < o.flow->loop.pipes.size(); ++i)
    if (o.flow->loop.pipes[i].part == LoopPart::circuit && o.flow->loop.pipes[i].trench == trench)
      length += o.flow->loop.network.pipes[i].length;
  return length;
}

const BillLine& coils_of(const Outcome& o) {
  static const BillLine none;
  for (const BillLine& line : o.bill->lines)
    if (line.key.ends_with("_coils")) return line;
  ADD_FAILURE() << "no coils on the bill";
  return none;
}

}  // namespace

TEST(CoilEnds, AreTheTailsWherePeopleJoinInTheHeadersTrench) {
  const Outcome o = solve(half_acre());
  const CoilEnd end = coil_end(half_acre(), o.layout, o.dig);
  EXPECT_FALSE(end.over_edge);
  EXPECT_NEAR(end.length(), kTail, 1e-12);
  EXPECT_NEAR(coil_cut(half_acre(), o, 1), kCoil + 2 * kTail, 0.02);
}

// Up the depth of the head and 0.6 m over the edge, besides the tail; one length in the loop, on the bill, in
// the rolls and in the report.
TEST(CoilEnds, ReachOverTheEdgeWhereNobodyGoesDownAndAreCountedOnceEverywhere) {
  const Plan plan = nobody_goes_down();
  const Outcome o = solve(plan), before = solve(half_acre());
  const double end = kTail + kDeep + 0.6, cut = kCoil + 2 * end;
  EXPECT_TRUE(coil_end(plan, o.layout, o.dig).over_edge);
  EXPECT_NEAR(coil_end(plan, o.layout, o.dig).length(), end, 1e-9);
  ASSERT_EQ(o.layout.trenches.size(), 4u);
  for (const Trench& t : o.layout.trenches) {
    EXPECT_NEAR(in_network(o, t.number), cut, 0.02);
    EXPECT_NEAR(coil_cut(plan, o, t.number), in_network(o, t.number), 1e-9);
  }
  EXPECT_NEAR(coils_of(o).needed, 4 * cut, 0.05);
  EXPECT_NEAR(coils_of(o).needed - coils_of(before).needed, 4 * 2 * (kDeep + 0.6), 1e-6);
  ASSERT_EQ(coils_of(o).bought.rolls.size(), 4u);
  for (const Roll& roll : coils_of(o).bought.rolls) EXPECT_NEAR(roll.left, 304.8 - cut, 0.02);
  EXPECT_NEAR(o.figures.at("buy.coil_end").value, end, 1e-9);
  EXPECT_NEAR(o.figures.at("buy.coil_length").value, cut, 0.02);
  EXPECT_NEAR(o.figures.at("buy.coil_pipe").value, 4 * cut, 0.05);
}

// Liquid goes through all of an end, and fills it; the ground is not asked to give heat by it.
TEST(CoilEnds, AreFilledAndFlowedThroughButDrawNoHeat) {
  const Outcome longer = solve(nobody_goes_down()), before = solve(half_acre());
  double area = 0;
  for (std::size_t i = 0; i < longer.flow->loop.pipes.size(); ++i)
    if (longer.flow->loop.pipes[i].part == LoopPart::circuit)
      area = std::numbers::pi / 4 * std::pow(longer.flow->loop.network.pipes[i].bore, 2);
  EXPECT_NEAR(longer.flow->volume - before.flow->volume, 4 * 2 * (kDeep + 0.6) * area, 1e-6);
  EXPECT_GT(longer.figures.at("flow.design.head").value, before.figures.at("flow.design.head").value);
  EXPECT_EQ(longer.temperatures->pipe, before.temperatures->pipe);
}

// A header 2 ft deep over trenches 6 ft deep: the step is 4 ft, more than the tail.
TEST(CoilEnds, AreNoShorterThanTheStepUpToTheHeader) {
  Plan plan = half_acre();
  plan.wishes.run_depth = 0.6096;
  const Outcome o = solve(plan);
  EXPECT_NEAR(coil_end(plan, o.layout, o.dig).length(), kDeep - 0.6096, 1e-9);
  EXPECT_NEAR(in_network(o, 1), kCoil + 2 * (kDeep - 0.6096), 0.02);
  EXPECT_NEAR(o.figures.at("buy.coil_end").value, kDeep - 0.6096, 1e-9);
}

}  // namespace underlawn
