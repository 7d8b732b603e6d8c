// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/network_solver.h"

#include <gtest/gtest.h>

#include <cmath>

#include "support/reference_networks.h"

using namespace underlawn;

namespace {

// Mass at every node and head along every pipe, worked out anew from the flows.
void expect_solved(const ReferenceNetwork& r, const NetworkFlow& flow, double total) {
  std::vector<double> sum(r.network.nodes, 0.0);
  sum[r.network.inlet] += total;
  sum[r.network.outlet] -= total;
  for (std::size_t i = 0; i < r.network.pipes.size(); ++i) {
    const NetPipe& p = r.network.pipes[i];
    sum[p.from] -= flow.pipes[i].flow;
    sum[p.to] += flow.pipes[i].flow;
    EXPECT_NEAR(flow.head[p.from] - flow.head[p.to], head_loss(p, r.fluid, flow.pipes[i].flow),
                1e-9 * flow.head_loss)
        << r.name << " " << p.name << " at " << total;
  }
  for (double s : sum) EXPECT_NEAR(s, 0, 1e-9 * total) << r.name << " at " << total;
}

}  // namespace

// Up, down and across all regimes, each solve from the one before.
TEST(NetworkSolver, SolvesOneFlowAfterAnother) {
  for (const ReferenceNetwork& r : reference_networks()) {
    NetworkSolver solver = NetworkSolver::of(r.network, r.fluid).value();
    for (double part : {1.0, 1.03, 1.0, 0.5, 0.2, 0.1, 0.01, 1e-4, 0.3, 0.35, 0.4, 3.0, 1.0, 1.0}) {
      ASSERT_TRUE(solver.solve(part * r.flow)) << r.name << " " << part;
      expect_solved(r, solver.all(), part * r.flow);
    }
  }
}

TEST(NetworkSolver, AnswersTheSameWhereverItComesFrom) {
  for (const ReferenceNetwork& r : reference_networks()) {
    NetworkSolver solver = NetworkSolver::of(r.network, r.fluid).value();
    ASSERT_TRUE(solver.solve(0.4 * r.flow) && solver.solve(r.flow));
    const NetworkFlow fresh = solve_network(r.network, r.fluid, r.flow).value();
    EXPECT_NEAR(solver.head_loss() / fresh.head_loss, 1, 1e-9) << r.name;
    for (std::size_t i = 0; i < r.network.pipes.size(); ++i)
      EXPECT_NEAR(solver.flow(i) / fresh.pipes[i].flow, 1, 1e-9) << r.name << " " << i;
  }
}

// A pipe that leads nowhere, one that comes back to where it left, two side by side.
TEST(NetworkSolver, TakesDeadEndsRingsAndTwins) {
  const FluidProperties water{999.7, 4192, 0.58, 1.306e-3};
  const ReferenceNetwork r{"odd",
                           {6,
                            {{"out", 0, 2, 20, 0.03, 1.5e-6},
                             {"twin", 2, 3, 100, 0.02, 1.5e-6},
                             {"other twin", 3, 2, 100, 0.02, 1.5e-6},
                             {"dead end", 2, 4, 10, 0.02, 1.5e-6},
                             {"ring", 3, 5, 10, 0.02, 1.5e-6},
                             {"ring back", 5, 3, 12, 0.02, 1.5e-6},
                             {"back", 3, 1, 20, 0.03, 1.5e-6}},
                            0,
                            1},
                           water,
                           6e-4};
  const NetworkFlow flow = solve_network(r.network, r.fluid, r.flow).value();
  expect_solved(r, flow, r.flow);
  EXPECT_NEAR(flow.pipes[1].flow, 3e-4, 1e-12);
  EXPECT_NEAR(flow.pipes[2].flow, -3e-4, 1e-12);
  for (int still : {3, 4, 5}) EXPECT_NEAR(flow.pipes[still].flow, 0, 1e-12) << still;
}

TEST(NetworkSolver, RefusesWhatCannotFlow) {
  EXPECT_EQ(NetworkSolver::of({}, {}).error().code, "network_empty");
  const ReferenceNetwork r = reference_networks().front();
  NetworkSolver solver = NetworkSolver::of(r.network, r.fluid).value();
  for (double bad : {0.0, -1.0, std::nan(""), HUGE_VAL})
    EXPECT_EQ(solver.solve(bad).error().code, "network_flow") << bad;
}
