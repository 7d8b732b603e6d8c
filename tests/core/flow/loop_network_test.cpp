// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/loop_network.h"

#include <gtest/gtest.h>

#include <map>
#include <numbers>

#include "flow/fittings.h"
#include "support/flow_layouts.h"

using namespace underlawn;

namespace {

const FluidProperties kWater{999.7, 4192, 0.58, 1.306e-3};

LoopNetwork network_of(const Layout& layout, HeaderArrangement arrangement) {
  FlowWishes w;
  w.arrangement = arrangement;
  return loop_network(layout, {}, w, typed_sizes({}, w).value()).value();
}

std::map<LoopPart, double> lengths(const LoopNetwork& loop) {
  std::map<LoopPart, double> sum;
  for (std::size_t i = 0; i < loop.pipes.size(); ++i) sum[loop.pipes[i].part] += loop.network.pipes[i].length;
  return sum;
}

NetworkFlow solved(const LoopNetwork& loop, double flow = 5.7e-4) {
  return solve_network(loop.network, kWater, flow).value();
}

double circuit_flow(const LoopNetwork& loop, const NetworkFlow& flow, int circuit) {
  return flow.pipes[loop.circuits[circuit]].flow;
}

}  // namespace

TEST(LoopNetwork, LaysThePipeOfTheDrawing) {
  const Layout layout = hand_layout(0, 4, true);
  auto direct = lengths(network_of(layout, HeaderArrangement::direct_return));
  EXPECT_NEAR(direct[LoopPart::run_supply], 20, 1e-9);
  EXPECT_NEAR(direct[LoopPart::run_return], 20, 1e-9);
  EXPECT_NEAR(direct[LoopPart::header_supply], 16, 1e-9);
  EXPECT_NEAR(direct[LoopPart::header_return], 16, 1e-9);
  EXPECT_NEAR(direct[LoopPart::circuit], 5 * (240 + 2 * 0.6), 1e-9);
  auto reverse = lengths(network_of(layout, HeaderArrangement::reverse_return));
  EXPECT_NEAR(reverse[LoopPart::header_supply], 16, 1e-9);
  EXPECT_NEAR(reverse[LoopPart::header_return], 16, 1e-9);
  EXPECT_NEAR(reverse[LoopPart::header_back], 16, 1e-9);
  auto home = lengths(network_of(layout, HeaderArrangement::home_runs));
  EXPECT_NEAR(home[LoopPart::lead], 2 * (20 + 24 + 28 + 32 + 36), 1e-9);
  EXPECT_EQ(home.count(LoopPart::run_supply), 0u);
}

TEST(LoopNetwork, EveryArrangementOfATreeHangsTogether) {
  Layout l = hand_layout(3, 4, true);
  l.header.legs.push_back({{0, 8}, {-5, 8}, {-5, 16}});
  l.trenches.push_back(hand_trench(9, {-5, 12}, 200));
  l.trenches.push_back(hand_trench(10, {-5, 16}, 260));
  l.header.legs.push_back({{0, -8}, {-2, -8}});
  l.trenches.push_back(hand_trench(11, {-2, -8}, 240));
  l.trenches.push_back(hand_trench(12, {-9, 0}, 240));
  for (auto a :
       {HeaderArrangement::direct_return, HeaderArrangement::reverse_return, HeaderArrangement::home_runs}) {
    const LoopNetwork loop = network_of(l, a);
    ASSERT_TRUE(check_network(loop.network)) << header_arrangement_name(a);
    const NetworkFlow flow = solved(loop);
    double sum = 0;
    for (int i = 0; i < 12; ++i) {
      EXPECT_GT(circuit_flow(loop, flow, i), 0);
      sum += circuit_flow(loop, flow, i);
      EXPECT_EQ(loop.pipes[loop.circuits[i]].trench, i + 1);
    }
    EXPECT_NEAR(sum, 5.7e-4, 1e-13);
    EXPECT_LT(flow.residual, 1e-9);
    for (std::size_t i = 0; i < loop.pipes.size(); ++i)
      EXPECT_GT(flow.pipes[i].flow, 0) << loop.network.pipes[i].name << " runs backwards";
  }
}

TEST(LoopNetwork, WhatCarriesIsWhatFlows) {
  // With circuits far longer than the header all take the same, so a pipe's flow tells how many it carries.
  const Layout l = hand_layout(3, 4, true, 0.5, 1, 5000);
  for (auto a : {HeaderArrangement::direct_return, HeaderArrangement::reverse_return}) {
    const LoopNetwork loop = network_of(l, a);
    const NetworkFlow flow = solved(loop);
    for (std::size_t i = 0; i < loop.pipes.size(); ++i)
      EXPECT_NEAR(flow.pipes[i].flow / (5.7e-4 / 8), loop.pipes[i].carries, 0.02)
          << loop.network.pipes[i].name;
  }
}

TEST(LoopNetwork, MirrorImagesFlowAlike) {
  for (auto a :
       {HeaderArrangement::direct_return, HeaderArrangement::reverse_return, HeaderArrangement::home_runs}) {
    const LoopNetwork loop = network_of(hand_layout(5, 5, false), a);
    const NetworkFlow flow = solved(loop, 1.5e-3);
    for (int i = 0; i < 5; ++i)
      EXPECT_NEAR(circuit_flow(loop, flow, i) / circuit_flow(loop, flow, i + 5), 1, 1e-9);
  }
}

TEST(LoopNetwork, ReverseReturnEvensOut) {
  const Layout l = hand_layout(0, 12, false, 4, 20, 150);
  const LoopNetwork direct = network_of(l, HeaderArrangement::direct_return);
  const LoopNetwork reverse = network_of(l, HeaderArrangement::reverse_return);
  const double uneven = imbalance(solved(direct, 2e-3), direct.circuits);
  const double even = imbalance(solved(reverse, 2e-3), reverse.circuits);
  EXPECT_LT(even, uneven / 2);
}

TEST(LoopNetwork, StepsAreSizedByWhatTheyCarry) {
  FlowWishes w;
  w.header_sizes = {"2 in DR 11", "1-1/4 in DR 11", "1 in DR 11"};
  w.run_size = "3 in DR 11";
  const HeaderSizes sizes = typed_sizes({}, w).value();
  const LoopNetwork loop = loop_network(hand_layout(0, 5, true), {}, w, sizes).value();
  EXPECT_EQ(loop.steps, (std::vector<int>{5, 4, 3, 2, 1}));
  const std::map<int, std::string> wanted = {
      {5, "2 in DR 11"}, {4, "1-1/4 in DR 11"}, {3, "1 in DR 11"}, {2, "1 in DR 11"}, {1, "1 in DR 11"}};
  for (const LoopPipe& p : loop.pipes) {
    if (p.step >= 0) {
      EXPECT_EQ(p.size.name, wanted.at(p.carries));
    }
    if (p.part == LoopPart::run_supply) {
      EXPECT_EQ(p.size.name, "3 in DR 11");
    }
  }
}

TEST(LoopNetwork, HeatPumpTakesItsHeadAtItsFlow) {
  FlowWishes w;
  w.heat_pump = {3.2, 5.7e-4};
  w.hose_kit = {0.5, 4e-4};
  const LoopNetwork loop = loop_network(hand_layout(0, 3, false), {}, w, typed_sizes({}, w).value()).value();
  const double by_hand = 3.2 * 4 + 0.5 * std::pow(1.14e-3 / 4e-4, 2);
  EXPECT_NEAR(solved(loop, 1.14e-3).pipes[0].head_loss, by_hand, 1e-3 * by_hand);
}

// Hagen-Poiseuille: two laminar circuits from one tee share the flow inversely to their lengths.
TEST(LoopNetwork, LaminarCircuitsShareInverselyToLength) {
  Layout l;
  l.run.line = {{-5, 0}, {0, 0}};
  l.trenches = {hand_trench(1, {0, 0}, 400), hand_trench(2, {0, 0}, 800)};
  straighten(l);
  FlowWishes w;
  w.tail = 0;
  const LoopNetwork loop = loop_network(l, {}, w, typed_sizes({}, w).value()).value();
  const NetworkFlow flow = solved(loop, 2e-5);
  EXPECT_EQ(flow.pipes[loop.circuits[0]].regime, Regime::laminar);
  EXPECT_NEAR(circuit_flow(loop, flow, 0) / circuit_flow(loop, flow, 1), 2, 0.01);
  const double d = find_pipe("3/4 in DR 11")->average_bore();
  const double head = 128 * kWater.viscosity * 400 * (2e-5 * 2 / 3) /
                      (std::numbers::pi * kWater.density * kGravity * std::pow(d, 4));
  EXPECT_NEAR(flow.pipes[loop.circuits[0]].head_loss, head, 0.01 * head);
}

TEST(LoopNetwork, RefusesACoilWithoutPipe) {
  Layout l = hand_layout(0, 3, false);
  l.trenches[2].coil.coil_length = 0;
  const auto loop = loop_network(l, {}, {}, typed_sizes({}, {}).value());
  ASSERT_FALSE(loop);
  EXPECT_EQ(loop.error().thing, "coil length in trench 3");
  FlowWishes w;
  w.header_sizes = {"hose"};
  EXPECT_FALSE(typed_sizes({}, w));
}

TEST(LoopNetwork, VolumeIsBoreTimesLength) {
  const LoopNetwork loop = network_of(hand_layout(0, 4, true), HeaderArrangement::direct_return);
  const double coil = find_pipe("3/4 in DR 11")->average_bore(),
               run = find_pipe("1-1/4 in DR 11")->average_bore();
  const double by_hand = std::numbers::pi / 4 * (coil * coil * 5 * 241.2 + run * run * 72);
  EXPECT_NEAR(loop_volume(volume_of(loop)), by_hand, 1e-9);
}
