// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/purge.h"

#include <gtest/gtest.h>

#include <numbers>

#include "support/flow_layouts.h"

using namespace underlawn;

namespace {

LoopNetwork network_of(const Layout& layout, const FlowWishes& w) {
  return loop_network(layout, {}, w, typed_sizes({}, w).value()).value();
}

double area_of(const char* pipe) {
  const double d = find_pipe(pipe)->average_bore();
  return std::numbers::pi / 4 * d * d;
}

}  // namespace

TEST(Purge, OneCircuitAsksForItsWidestPipe) {
  FlowWishes w;
  const LoopNetwork loop = network_of(hand_layout(0, 0, true), w);
  const PurgeRun run = purge_loop(loop, w)->together;
  EXPECT_NEAR(run.flow, 0.6096 * area_of("1-1/4 in DR 11"), 1e-9);
  EXPECT_EQ(loop.pipes[run.slowest].size.name, "1-1/4 in DR 11");
}

TEST(Purge, ManyEvenCircuitsAskForThemselves) {
  FlowWishes w;
  const Layout l = hand_layout(4, 4, false);
  const LoopNetwork loop = network_of(l, w);
  const PurgeRun run = purge_loop(loop, w)->together;
  // Of a narrow coil on a wide header the last header piece carries one circuit only and governs.
  EXPECT_EQ(loop.pipes[run.slowest].carries, 1);
  EXPECT_GT(run.flow, 8 * 0.6096 * area_of("3/4 in DR 11"));
  // No pipe is slower than asked, and one is just at it.
  const auto water = fluid_properties(Fluid::water, 0, kPurgeTemperature).value();
  const auto flow = solve_network(loop.network, water, run.flow).value();
  double least = 1e9;
  for (std::size_t i = 1; i < flow.pipes.size(); ++i) least = std::min(least, flow.pipes[i].velocity);
  EXPECT_NEAR(least, 0.6096, 1e-6);
  EXPECT_NEAR(flow.head_loss - flow.pipes[0].head_loss, run.head, 1e-6 * run.head);
}

TEST(Purge, ACartCanOrCannot) {
  FlowWishes w;
  w.flush_cart = {"weak", {{0, 3, 500}, {1e-3, 2, 500}, {2e-3, 1, 500}}};
  const LoopNetwork loop = network_of(hand_layout(4, 4, false), w);
  PurgeRun run = purge_loop(loop, w)->together;
  ASSERT_TRUE(run.cart);
  EXPECT_FALSE(run.cart_can);
  EXPECT_LT(run.cart->flow, run.flow);
  w.flush_cart = {"strong", {{0, 300, 9000}, {1e-2, 200, 9000}, {2e-2, 100, 9000}}};
  run = purge_loop(loop, w)->together;
  EXPECT_TRUE(run.cart_can);
  w.flush_cart = {};
  EXPECT_FALSE(purge_loop(loop, w)->together.cart_can);
}

TEST(Purge, TheQuickAnswerIsTheFullOne) {
  FlowWishes w;
  int can = 0, cannot = 0;
  for (int circuits = 1; circuits <= 9; circuits += 2)
    for (double head = 2; head < 200; head *= 1.2) {
      w.flush_cart = {"cart", {{0, head, 900}, {1.5e-3, 0.8 * head, 900}, {4e-3, 0.1 * head, 900}}};
      const LoopNetwork loop = network_of(hand_layout(0, circuits, true), w);
      const bool full = purge_loop(loop, w)->together.cart_can;
      EXPECT_EQ(cart_flushes(loop, w), full) << circuits << " " << head;
      ++(full ? can : cannot);
    }
  EXPECT_GT(can, 5);
  EXPECT_GT(cannot, 5);
}

TEST(Purge, HomeRunsOneByOneAskForOneCircuitsFlow) {
  FlowWishes w;
  w.arrangement = HeaderArrangement::home_runs;
  const LoopNetwork loop = network_of(hand_layout(4, 4, true), w);
  const Purge purge = purge_loop(loop, w).value();
  ASSERT_TRUE(purge.one_by_one);
  EXPECT_NEAR(purge.one_by_one->flow, 0.6096 * area_of("3/4 in DR 11"), 1e-6);
  EXPECT_GT(purge.together.flow, 9 * purge.one_by_one->flow - 1e-9);
  // Three times each one's pipe at 2 ft/s: leads of 20 m and 4 m a step to each side, there and back.
  double by_hand = 3 * (241.2 + 2 * 20) / 0.6096;
  for (int i = 1; i <= 4; ++i) by_hand += 2 * 3 * (241.2 + 2 * (20 + 4 * i)) / 0.6096;
  EXPECT_NEAR(purge.one_by_one->time, by_hand, 1e-3);
}

TEST(Purge, TimeIsThatOfTheLiquidsPassage) {
  FlowWishes w;
  w.purge_volumes = 20;
  const LoopNetwork loop = network_of(hand_layout(0, 0, true), w);
  const PurgeRun run = purge_loop(loop, w)->together;
  const double speed = run.flow / area_of("3/4 in DR 11");
  EXPECT_NEAR(run.circuits_time, 20 * 241.2 / speed, 1e-6 * run.circuits_time);
  EXPECT_NEAR(run.time, run.circuits_time, 1e-9);
  w.purge_volumes = 1;
  EXPECT_EQ(purge_loop(loop, w)->together.time, 900) << "a quarter of an hour at the least";
}

TEST(Purge, RefusesNoVelocity) {
  FlowWishes w;
  const LoopNetwork loop = network_of(hand_layout(0, 2, true), w);
  w.purge_velocity = 0;
  EXPECT_FALSE(purge_loop(loop, w));
}
