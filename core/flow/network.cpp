// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/network.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/quantity.h"
#include "flow/gradient.h"
#include "flow/pipe_law.h"

namespace underlawn {
namespace {

using std::numbers::pi;

double bore_area(const NetPipe& p) {
  return pi * p.bore * p.bore / 4;
}

double reynolds_at(const NetPipe& p, const FluidProperties& fluid, double flow) {
  return std::abs(flow) / bore_area(p) * p.bore * fluid.density / fluid.viscosity;
}

Trouble pipe_trouble(const NetPipe& p, std::string what, double value, std::string bound,
                     std::string advice) {
  return {"network_pipe", what + " of pipe \"" + p.name + "\"",
          print_quantity(Quantity::length, value, UnitSystem::metric), std::move(bound), std::move(advice)};
}

// Nodes that can be reached from the inlet.
std::vector<bool> reached(const Network& net) {
  std::vector<bool> seen(net.nodes, false);
  std::vector<int> open = {net.inlet};
  seen[net.inlet] = true;
  while (!open.empty()) {
    const int node = open.back();
    open.pop_back();
    for (const NetPipe& p : net.pipes)
      for (const auto& [a, b] : {std::pair{p.from, p.to}, std::pair{p.to, p.from}})
        if (a == node && !seen[b]) {
          seen[b] = true;
          open.push_back(b);
        }
  }
  return seen;
}

PipeFlow described(const NetPipe& p, const FluidProperties& fluid, double flow, double head) {
  const double re = reynolds_at(p, fluid, flow);
  return {flow, std::abs(flow) / bore_area(p), re, regime_of(re), head};
}

double worst_node(const Network& net, const std::vector<double>& flow, double total) {
  std::vector<double> sum(net.nodes, 0.0);
  sum[net.inlet] += total;
  sum[net.outlet] -= total;
  for (std::size_t i = 0; i < flow.size(); ++i) {
    sum[net.pipes[i].from] -= flow[i];
    sum[net.pipes[i].to] += flow[i];
  }
  double worst = 0;
  for (double s : sum) worst = std::max(worst, std::abs(s));
  return worst / total;
}

}  // namespace

double head_loss(const NetPipe& p, const FluidProperties& fluid, double flow) {
  return flow == 0 ? 0 : PipeLaw(p, fluid).at(flow).head;
}

Result<void> check_network(const Network& net) {
  if (net.pipes.empty())
    return refuse({"network_empty", "loop network", "0 pipes", "at least one pipe", "Place a trench first."});
  for (int end : {net.inlet, net.outlet})
    if (end < 0 || end >= net.nodes)
      return refuse(
          {"network_ends", "inlet or outlet", std::to_string(end), "a node of the network", "Join the run."});
  for (const NetPipe& p : net.pipes) {
    if (!(p.length > 0) || !std::isfinite(p.length))
      return refuse(
          pipe_trouble(p, "length", p.length, "more than 0 m", "Take the circuit out or give it a length."));
    if (!(p.bore > 0) || !std::isfinite(p.bore))
      return refuse(pipe_trouble(p, "bore", p.bore, "more than 0 m", "Choose a pipe size."));
    if (std::min(p.from, p.to) < 0 || std::max(p.from, p.to) >= net.nodes || p.from == p.to)
      return refuse({"network_pipe", "ends of pipe \"" + p.name + "\"",
                     std::to_string(p.from) + " and " + std::to_string(p.to), "two different nodes",
                     "Join it anew."});
  }
  const std::vector<bool> seen = reached(net);
  for (const NetPipe& p : net.pipes)
    if (!seen[p.from])
      return refuse({"network_disconnected", "pipe \"" + p.name + "\"", "joined to nothing",
                     "joined to the supply run", "Join it to the header or take it out."});
  if (!seen[net.outlet] || std::count(seen.begin(), seen.end(), false) > 0)
    return refuse({"network_disconnected", "loop network", "open", "a way from supply to return",
                   "Join supply and return through at least one circuit."});
  return {};
}

Result<NetworkFlow> solve_network(const Network& net, const FluidProperties& fluid, double total) {
  if (auto ok = check_network(net); !ok) return refuse(ok.error());
  if (!(total > 0) || !std::isfinite(total))
    return refuse({"network_flow", "flow", print_quantity(Quantity::flow, total, UnitSystem::metric),
                   "more than 0", "Enter the heat pump's flow."});
  GradientMethod gradient(net, fluid, total);
  NetworkFlow out;
  out.iterations = gradient.run();
  if (out.iterations == 0)
    return refuse({"network_unsettled", "flows", "still moving after 60 steps", "settled",
                   "Look for pipes of very unlike bores joined together."});
  for (std::size_t i = 0; i < net.pipes.size(); ++i)
    out.pipes.push_back(described(net.pipes[i], fluid, gradient.flow()[i], gradient.losses()[i].head));
  for (int n = 0; n < net.nodes; ++n) out.head.push_back(gradient.head(n));
  out.total_flow = total;
  out.head_loss = out.head[net.inlet];
  out.residual = worst_node(net, gradient.flow(), total);
  return out;
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
