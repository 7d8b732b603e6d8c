// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/network_solver.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/quantity.h"
#include "base/say.h"

namespace underlawn {
namespace {

constexpr int kMostSteps = 60, kSharpSteps = 20;
// Relative moves of the flows. What a step leaves is a tenth of the fourth power of its move where it is
// sharpened, else some ten times the square.
constexpr double kSharp = 0.2, kSharpLast = 8e-3, kPlainLast = 2e-7, kSharpEnough = 1e-11;
constexpr double kNothing = 1e-12;  // of the total flow

}  // namespace

Result<NetworkSolver> NetworkSolver::of(const Network& network, const FluidProperties& fluid) {
  if (auto ok = check_network(network); !ok) return refuse(ok.error());
  return NetworkSolver(network, fluid);
}

NetworkSolver::NetworkSolver(const Network& net, const FluidProperties& fluid)
    : net_(branches_of(net)), nodes_(net.nodes), inlet_(net.inlet), outlet_(net.outlet), equations_(net_) {
  pipes_.reserve(net.pipes.size());
  for (const NetPipe& p : net.pipes) {
    const double area = std::numbers::pi / 4 * p.bore * p.bore;
    pipes_.push_back(
        {p.from, p.to, 0, 1, area, p.bore * fluid.density / (area * fluid.viscosity), PipeLaw(p, fluid)});
  }
  const std::size_t n = net_.branches.size();
  calm_.assign(n, 1e300);
  loss_.resize(n);
  for (std::size_t b = 0; b < n; ++b)
    for (const BranchPipe& at : net_.branches[b].pipes) {
      Pipe& p = pipes_[at.pipe];
      p.branch = static_cast<int>(b);
      p.sign = at.forward ? 1 : -1;
      in_order_.push_back(at.pipe);
      calm_[b] = std::min(calm_[b], p.law.calm());
      const NetPipe& pipe = net.pipes[at.pipe];
      const double factor = 0.03 * std::sqrt(std::sqrt(pipe.bore / 0.03));
      loss_[b].slope += (factor * pipe.length / pipe.bore + pipe.fittings) / (p.area * p.area);
    }
  flow_.assign(n, 0.0);
  before_ = straight_ = move_ = conductance_ = flow_;
  head_.resize(net_.junctions.size());
  more_ = head_;
  share_by_blasius();
}

// Newton's method on losses that go as flow^1.75, which is Blasius's law.
void NetworkSolver::share_by_blasius() {
  std::vector<double> weight(loss_.size());
  for (std::size_t b = 0; b < weight.size(); ++b) {
    weight[b] = loss_[b].slope;
    flow_[b] = 1 / std::sqrt(weight[b]);
  }
  total_ = 1;
  double most = 1e300;
  for (int i = 0; i < 12 && most > 0.02; ++i) {
    for (std::size_t b = 0; b < weight.size(); ++b) {
      const double size = std::sqrt(std::max(std::abs(flow_[b]), 1e-3)), power = size * std::sqrt(size);
      loss_[b] = {weight[b] * power * flow_[b], 1.75 * weight[b] * power, 0, 0};
    }
    find_heads();
    find_moves();
    most = 0;
    for (std::size_t b = 0; b < weight.size(); ++b) {
      most = std::max(most, std::abs(move_[b]));
      flow_[b] += move_[b];
    }
  }
  shares_ = flow_;
  total_ = 0;
}

void NetworkSolver::start(double total) {
  const double times = total_ > 0 ? total / total_ : total;
  if (!(total_ > 0)) flow_ = shares_;
  for (double& q : flow_) q *= times;
  total_ = total;
}

Result<void> NetworkSolver::solve(double total) {
  if (!(total > 0) || !std::isfinite(total))
    return refuse({"network_flow", say("flow"), print_quantity(Quantity::flow, total, UnitSystem::metric),
                   say("more than 0"), say("Enter the heat pump's flow.")});
  start(total);
  if (run()) return {};
  restart();
  return refuse({"network_unsettled", say("flows"), say("still moving after 60 steps"), say("settled"),
                 say("Look for pipes of very unlike bores joined together.")});
}

bool NetworkSolver::run() {
  lose();
  for (iterations_ = 1; iterations_ <= kMostSteps; ++iterations_) {
    find_heads();
    const double most = find_moves();
    const bool sharp = gentle_ && most < kSharp && iterations_ <= kSharpSteps;
    if (sharp) sharpen(most);
    if (most < (sharp ? kSharpLast : kPlainLast)) {
      for (std::size_t b = 0; b < flow_.size(); ++b) flow_[b] += move_[b];
      return true;
    }
    before_ = flow_;
    const double first = std::abs(work());
    go(1);
    // Between regimes the curve bends sharply and a whole step can overshoot for ever: then halve until it
    // does not.
    double part = 0.5;
    while (!sharp && part > 1e-3 && work() > 0.5 * first + 1e-9 * total_) {
      go(part);
      part /= 2;
    }
  }
  return false;
}

void NetworkSolver::find_heads() {
  for (std::size_t b = 0; b < flow_.size(); ++b) conductance_[b] = 1 / loss_[b].slope;
  equations_.factor(conductance_);
  std::fill(head_.begin(), head_.end(), 0.0);
  head_[net_.inlet] = total_;
  for (std::size_t b = 0; b < flow_.size(); ++b) {
    const double free = flow_[b] - conductance_[b] * loss_[b].head;
    head_[net_.branches[b].from] -= free;
    head_[net_.branches[b].to] += free;
  }
  equations_.solve(head_);
}

// The largest move beside the branch's flow; what is nothing beside the total is no move.
double NetworkSolver::find_moves() {
  double most = 0;
  for (std::size_t b = 0; b < flow_.size(); ++b) {
    const double drop = head_[net_.branches[b].from] - head_[net_.branches[b].to];
    move_[b] = (drop - loss_[b].head) * conductance_[b];
    const double size = std::abs(move_[b]);
    if (size > kNothing * total_) most = std::max(most, size / std::max(std::abs(flow_[b]), calm_[b]));
  }
  return most;
}

// The same equations again for what the bend of the losses adds over the move, until it adds no more; each
// time leaves about `most` of the change before.
void NetworkSolver::sharpen(double most) {
  straight_ = move_;
  std::fill(more_.begin(), more_.end(), 0.0);
  for (double change = 1; change * most > kSharpEnough;) {
    std::fill(more_.begin(), more_.end(), 0.0);
    for (std::size_t b = 0; b < flow_.size(); ++b) {
      const double m = move_[b];
      before_[b] = (loss_[b].curve + loss_[b].twist * m) * m * m * conductance_[b];
      more_[net_.branches[b].from] += before_[b];
      more_[net_.branches[b].to] -= before_[b];
    }
    equations_.solve(more_);
    double size = 0;
    for (std::size_t b = 0; b < flow_.size(); ++b) {
      const double drop = more_[net_.branches[b].from] - more_[net_.branches[b].to];
      const double move = straight_[b] + conductance_[b] * drop - before_[b];
      size = std::max(size, std::abs(move - move_[b]) / std::max(std::abs(flow_[b]), calm_[b]));
      move_[b] = move;
    }
    if (!(size < change)) break;
    change = size;
  }
  for (std::size_t j = 0; j < head_.size(); ++j) head_[j] += more_[j];
}

void NetworkSolver::lose() {
  gentle_ = true;
  for (Sum& s : loss_) s = {0, 0, 0, 0};
  for (int i : in_order_) {
    const Pipe& p = pipes_[i];
    const Loss l = p.law.at(flow_[p.branch]);
    Sum& s = loss_[p.branch];
    s = {s.head + l.head, s.slope + l.slope, s.curve + l.curve, s.twist + l.twist};
    gentle_ = gentle_ && l.gentle;
  }
}

void NetworkSolver::go(double part) {
  for (std::size_t b = 0; b < flow_.size(); ++b) flow_[b] = before_[b] + part * move_[b];
  lose();
}

// Work done along the move from where the flows are; the flows sought are where no move does any (the loss of
// head is the slope of a convex energy). Negative while the move still gains.
double NetworkSolver::work() const {
  double sum = 0;
  for (std::size_t b = 0; b < flow_.size(); ++b) sum += move_[b] * loss_[b].head;
  return sum;
}

double NetworkSolver::flow(std::size_t pipe) const {
  return pipes_[pipe].sign * flow_[pipes_[pipe].branch];
}

double NetworkSolver::velocity(std::size_t pipe) const {
  return std::abs(flow(pipe)) / pipes_[pipe].area;
}

double NetworkSolver::head_loss(std::size_t pipe) const {
  return pipes_[pipe].law.at(flow(pipe)).head;
}

NetworkFlow NetworkSolver::all() const {
  NetworkFlow out;
  for (std::size_t i = 0; i < pipes_.size(); ++i) {
    const double q = flow(i), re = pipes_[i].reynolds * std::abs(q);
    out.pipes.push_back({q, velocity(i), re, regime_of(re), head_loss(i)});
  }
  out.head.assign(nodes_, 0.0);
  for (std::size_t j = 0; j < net_.junctions.size(); ++j) out.head[net_.junctions[j]] = head_[j];
  for (const Branch& b : net_.branches) {
    double head = head_[b.from];
    for (std::size_t i = 0; i + 1 < b.pipes.size(); ++i) {
      const auto [pipe, forward] = b.pipes[i];
      head -= forward ? out.pipes[pipe].head_loss : -out.pipes[pipe].head_loss;
      out.head[forward ? pipes_[pipe].to : pipes_[pipe].from] = head;
    }
  }
  out.total_flow = total_;
  out.head_loss = out.head[inlet_];
  out.iterations = iterations_;
  out.residual = worst_node();
  return out;
}

double NetworkSolver::worst_node() const {
  std::vector<double> sum(nodes_, 0.0);
  sum[inlet_] += total_;
  sum[outlet_] -= total_;
  for (std::size_t i = 0; i < pipes_.size(); ++i) {
    sum[pipes_[i].from] -= flow(i);
    sum[pipes_[i].to] += flow(i);
  }
  double worst = 0;
  for (double s : sum) worst = std::max(worst, std::abs(s));
  return worst / total_;
}

}  // namespace underlawn
