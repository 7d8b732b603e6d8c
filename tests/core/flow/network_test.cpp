// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/network.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

using namespace underlawn;

namespace {

const FluidProperties kWater{999.7, 4192, 0.58, 1.306e-3};

// A ladder: supply nodes 0..n, return nodes n+1..2n+1; rung i joins supply i+1 to return. Reverse return
// takes the return from the far end.
Network ladder(int rungs, bool reverse) {
  Network net;
  net.nodes = 2 * rungs + 2;
  const int back = rungs + 1;
  for (int i = 0; i < rungs; ++i) {
    net.pipes.push_back({"supply " + std::to_string(i), i, i + 1, 4, 0.034, 1.5e-6});
    net.pipes.push_back({"circuit " + std::to_string(i), i + 1, back + i + 1, 244, 0.0215, 1.5e-6, 0.9144});
    net.pipes.push_back({"return " + std::to_string(i), back + i + 1, back + i, 4, 0.034, 1.5e-6});
  }
  net.inlet = 0;
  net.outlet = reverse ? 2 * rungs + 1 : back;
  if (reverse) {
    net.pipes.erase(net.pipes.begin() + 2);  // the return's first piece leads nowhere
    --net.nodes;
    for (NetPipe& p : net.pipes)
      for (int* end : {&p.from, &p.to})
        if (*end > back) --*end;
    net.outlet = net.nodes - 1;
  }
  return net;
}

std::vector<int> circuits_of(const Network& net) {
  std::vector<int> out;
  for (std::size_t i = 0; i < net.pipes.size(); ++i)
    if (net.pipes[i].name.starts_with("circuit")) out.push_back(static_cast<int>(i));
  return out;
}

Network random_network(std::mt19937& random) {
  const auto number = [&](double low, double high) {
    return low + (high - low) * std::generate_canonical<double, 53>(random);
  };
  Network net;
  net.nodes = 3 + static_cast<int>(number(0, 18));
  for (int n = 1; n < net.nodes; ++n)
    net.pipes.push_back(
        {"tree", static_cast<int>(number(0, n)), n, number(1, 300), number(0.02, 0.06), 1.5e-6});
  const int extra = 1 + static_cast<int>(number(0, net.nodes));
  for (int i = 0; i < extra; ++i) {
    const int a = static_cast<int>(number(0, net.nodes)), b = static_cast<int>(number(0, net.nodes));
    if (a != b)
      net.pipes.push_back(
          {"chord", a, b, number(1, 300), number(0.02, 0.06), 1.5e-6, number(0, 2) > 1 ? 0.9 : 0});
  }
  net.inlet = 0;
  net.outlet = net.nodes - 1;
  return net;
}

// Heads at the nodes are single-valued, so every closed path closes when every pipe's loss, worked out anew
// from its flow, meets its ends' heads.
void expect_paths_close(const Network& net, const NetworkFlow& flow, int which) {
  for (std::size_t p = 0; p < net.pipes.size(); ++p) {
    const double ends = flow.head[net.pipes[p].from] - flow.head[net.pipes[p].to];
    EXPECT_NEAR(ends, head_loss(net.pipes[p], kWater, flow.pipes[p].flow), 1e-9 * flow.head_loss)
        << which << " " << p;
  }
}

}  // namespace

TEST(Network, FiveThousandRandomNetworksBalanceAtNodesAndRoundPaths) {
  std::mt19937 random(20261125);
  for (int i = 0; i < 5000; ++i) {
    const Network net = random_network(random);
    const auto flow = solve_network(net, kWater, 1e-4 + 8e-4 * (i % 97) / 97);
    ASSERT_TRUE(flow) << i << ": " << flow.error().message();
    EXPECT_LT(flow->residual, 1e-9) << i;
    expect_paths_close(net, *flow, i);
  }
}

TEST(Network, EqualCircuitsInReverseReturnShareInMirrorImage) {
  const Network net = ladder(6, true);
  const NetworkFlow flow = solve_network(net, kWater, 9e-4).value();
  const std::vector<int> c = circuits_of(net);
  for (int i = 0; i < 3; ++i) EXPECT_NEAR(flow.pipes[c[i]].flow / flow.pipes[c[5 - i]].flow, 1, 1e-9);
}

TEST(Network, ReverseReturnIsBetterBalancedThanDirect) {
  const Network direct = ladder(6, false), reverse = ladder(6, true);
  const double out = imbalance(solve_network(direct, kWater, 9e-4).value(), circuits_of(direct));
  const double in = imbalance(solve_network(reverse, kWater, 9e-4).value(), circuits_of(reverse));
  EXPECT_LT(in, out);
  EXPECT_GT(in, 0);
}

TEST(Network, OnePipeTakesItsOwnHead) {
  Network net{2, {{"only", 0, 1, 100, 0.0215, 1.5e-6}}, 0, 1};
  const NetworkFlow flow = solve_network(net, kWater, 2e-4).value();
  EXPECT_NEAR(flow.head_loss, head_loss(net.pipes[0], kWater, 2e-4), 1e-12);
}

TEST(Network, RefusesWhatCannotFlow) {
  EXPECT_EQ(solve_network({}, kWater, 1e-4).error().code, "network_empty");
  Network net{3, {{"a", 0, 1, 10, 0.02}}, 0, 1};
  EXPECT_EQ(solve_network(net, kWater, 1e-4).error().code, "network_disconnected");
  net.nodes = 2;
  EXPECT_EQ(solve_network(net, kWater, 0).error().code, "network_flow");
  net.pipes[0].length = 0;
  EXPECT_EQ(solve_network(net, kWater, 1e-4).error().thing, "length of pipe \"a\"");
}
