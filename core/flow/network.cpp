// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/network.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/quantity.h"

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

struct Loss {
  double head;   // m, signed
  double slope;  // m per m3/s, > 0
};

Loss loss_at(const NetPipe& p, const FluidProperties& fluid, double flow) {
  const double q = std::max(std::abs(flow), 1e-12), step = 1e-5 * q;
  const double low = head_loss(p, fluid, q - step), high = head_loss(p, fluid, q + step);
  return {head_loss(p, fluid, flow), (high - low) / (2 * step)};
}

class Gradient {
 public:
  Gradient(const Network& net, const FluidProperties& fluid, double total)
      : net_(net),
        fluid_(fluid),
        total_(total),
        flow_(net.pipes.size()),
        head_(Eigen::VectorXd::Zero(net.nodes)) {
    // A start that flows everywhere: a fifth of a metre a second.
    for (std::size_t i = 0; i < flow_.size(); ++i) flow_[i] = 0.2 * bore_area(net.pipes[i]);
  }

  int run() {
    double before = total_;
    for (int i = 1; i <= 60; ++i) {
      const double change = step();
      // Settled, or as near as rounding lets it come.
      if (change < 1e-12 * total_ || (change < 1e-10 * total_ && change > 0.5 * before)) return i;
      before = change;
    }
    return 0;
  }
  const std::vector<double>& flow() const { return flow_; }
  double head(int node) const { return head_[node]; }

 private:
  // One step of the global gradient method; the largest change of a flow, m3/s.
  double step() {
    const int n = net_.nodes;
    Eigen::MatrixXd a = Eigen::MatrixXd::Zero(n, n);
    Eigen::VectorXd b = Eigen::VectorXd::Zero(n);
    b[net_.inlet] += total_;
    std::vector<Loss> losses;
    for (std::size_t i = 0; i < flow_.size(); ++i) {
      const NetPipe& p = net_.pipes[i];
      losses.push_back(loss_at(p, fluid_, flow_[i]));
      const double g = 1 / losses[i].slope, free = flow_[i] - g * losses[i].head;
      a(p.from, p.from) += g;
      a(p.to, p.to) += g;
      a(p.from, p.to) -= g;
      a(p.to, p.from) -= g;
      b[p.from] -= free;
      b[p.to] += free;
    }
    a.row(net_.outlet).setZero();
    a.col(net_.outlet).setZero();
    a(net_.outlet, net_.outlet) = 1;
    b[net_.outlet] = 0;
    head_ = a.ldlt().solve(b);
    std::vector<double> move(flow_.size());
    for (std::size_t i = 0; i < flow_.size(); ++i) {
      const NetPipe& p = net_.pipes[i];
      move[i] = (head_[p.from] - head_[p.to] - losses[i].head) / losses[i].slope;
    }
    const double part = balanced_ ? how_far(move) : 1;
    balanced_ = true;  // the first full step meets the nodes, and every later move keeps them met
    double change = 0;
    for (std::size_t i = 0; i < flow_.size(); ++i) {
      flow_[i] += part * move[i];
      change = std::max(change, std::abs(move[i]));
    }
    return change;
  }

  // Work done along a move; the flows sought are where no move does any (the loss of head is the slope of a
  // convex energy). Negative while the move still gains.
  double work(const std::vector<double>& move, double part) const {
    double sum = 0;
    for (std::size_t i = 0; i < move.size(); ++i)
      sum += move[i] * head_loss(net_.pipes[i], fluid_, flow_[i] + part * move[i]);
    return sum;
  }

  // Between regimes the curve bends sharply and a whole step can overshoot for ever: then halve until it does
  // not.
  double how_far(const std::vector<double>& move) const {
    const double start = std::abs(work(move, 0));
    double part = 1;
    while (part > 1e-3 && work(move, part) > 0.5 * start + 1e-9 * total_) part /= 2;
    return part;
  }

  const Network& net_;
  const FluidProperties& fluid_;
  double total_;
  std::vector<double> flow_;
  Eigen::VectorXd head_;
  bool balanced_ = false;
};

PipeFlow described(const NetPipe& p, const FluidProperties& fluid, double flow) {
  const double re = reynolds_at(p, fluid, flow);
  return {flow, std::abs(flow) / bore_area(p), re, regime_of(re), head_loss(p, fluid, flow)};
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
  const double re = reynolds_at(p, fluid, flow);
  if (re <= 0) return 0;
  const double v = std::abs(flow) / bore_area(p);
  const double f = p.coil_diameter > 0 ? coil_friction_factor(re, p.bore, p.coil_diameter)
                                       : friction_factor(re, p.roughness / p.bore);
  return std::copysign((f * p.length / p.bore + p.fittings) * v * v / (2 * kGravity), flow);
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
  Gradient gradient(net, fluid, total);
  NetworkFlow out;
  out.iterations = gradient.run();
  if (out.iterations == 0)
    return refuse({"network_unsettled", "flows", "still moving after 60 steps", "settled",
                   "Look for pipes of very unlike bores joined together."});
  for (std::size_t i = 0; i < net.pipes.size(); ++i)
    out.pipes.push_back(described(net.pipes[i], fluid, gradient.flow()[i]));
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
