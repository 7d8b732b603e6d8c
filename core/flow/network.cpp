// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/network.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/quantity.h"
#include "base/say.h"
#include "flow/network_solver.h"
#include "flow/pipe_law.h"

namespace underlawn {
namespace {

Trouble pipe_trouble(std::string thing, double value, std::string bound, std::string advice) {
  return {"network_pipe", std::move(thing), print_quantity(Quantity::length, value, UnitSystem::metric),
          std::move(bound), std::move(advice)};
}

// Nodes that hang together, each set named by one of them.
class Together {
 public:
  explicit Together(const Network& net) : up_(net.nodes) {
    std::iota(up_.begin(), up_.end(), 0);
    for (const NetPipe& p : net.pipes) up_[of(p.from)] = of(p.to);
  }
  int of(int node) {
    while (up_[node] != node) node = up_[node] = up_[up_[node]];
    return node;
  }

 private:
  std::vector<int> up_;
};

}  // namespace

double head_loss(const NetPipe& p, const FluidProperties& fluid, double flow) {
  return flow == 0 ? 0 : PipeLaw(p, fluid).at(flow).head;
}

Result<void> check_network(const Network& net) {
  if (net.pipes.empty())
    return refuse({"network_empty", say("loop network"), say("0 pipes"), say("at least one pipe"),
                   say("Place a trench first.")});
  for (int end : {net.inlet, net.outlet})
    if (end < 0 || end >= net.nodes)
      return refuse({"network_ends", say("inlet or outlet"), std::to_string(end),
                     say("a node of the network"), say("Join the run.")});
  for (const NetPipe& p : net.pipes) {
    if (!(p.length > 0) || !std::isfinite(p.length))
      return refuse(pipe_trouble(say("length of pipe \"{}\"", p.name), p.length, say("more than 0 m"),
                                 say("Take the circuit out or give it a length.")));
    if (!(p.bore > 0) || !std::isfinite(p.bore))
      return refuse(pipe_trouble(say("bore of pipe \"{}\"", p.name), p.bore, say("more than 0 m"),
                                 say("Choose a pipe size.")));
    if (std::min(p.from, p.to) < 0 || std::max(p.from, p.to) >= net.nodes || p.from == p.to)
      return refuse({"network_pipe", say("ends of pipe \"{}\"", p.name),
                     say("{} and {}", std::to_string(p.from), std::to_string(p.to)),
                     say("two different nodes"), say("Join it anew.")});
  }
  Together together(net);
  const int house = together.of(net.inlet);
  for (const NetPipe& p : net.pipes)
    if (together.of(p.from) != house)
      return refuse({"network_disconnected", say("pipe \"{}\"", p.name), say("joined to nothing"),
                     say("joined to the supply run"), say("Join it to the header or take it out.")});
  for (int n = 0; n < net.nodes; ++n)
    if (together.of(n) != house)
      return refuse({"network_disconnected", say("loop network"), say_as("a network", "open"),
                     say("a way from supply to return"),
                     say("Join supply and return through at least one circuit.")});
  return {};
}

Result<NetworkFlow> solve_network(const Network& net, const FluidProperties& fluid, double total) {
  auto solver = NetworkSolver::of(net, fluid);
  if (!solver) return refuse(solver.error());
  if (auto ok = solver->solve(total); !ok) return refuse(ok.error());
  return solver->all();
}

double imbalance(const NetworkFlow& flow, const std::vector<int>& pipes) {
  if (pipes.empty()) return 0;
  double low = 1e300, high = 0, sum = 0;
  for (int i : pipes) {
    const double q = std::abs(flow.pipes[i].flow);
    low = std::min(low, q);
    high = std::max(high, q);
    sum += q;
  }
  return sum > 0 ? (high - low) * pipes.size() / sum : 0;
}

}  // namespace underlawn
