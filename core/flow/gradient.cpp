// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/gradient.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace underlawn {

GradientMethod::GradientMethod(const Network& net, const FluidProperties& fluid, double total)
    : net_(net),
      total_(total),
      before_(net.pipes.size()),
      move_(net.pipes.size()),
      losses_(net.pipes.size()),
      equations_(net) {
  for (const NetPipe& p : net.pipes) {
    laws_.emplace_back(p, fluid);
    // A start that flows everywhere: a fifth of a metre a second.
    flow_.push_back(0.2 * std::numbers::pi / 4 * p.bore * p.bore);
    losses_[flow_.size() - 1] = laws_.back().at(flow_.back());
  }
}

int GradientMethod::run() {
  double before = total_;
  for (int i = 1; i <= 60; ++i) {
    const double change = step();
    if (closes()) return i;
    // Settled, or as near as rounding lets it come.
    if (change < 1e-12 * total_ || (change < 1e-10 * total_ && change > 0.5 * before)) return i;
    before = change;
  }
  return 0;
}

// The largest change of a flow that the step asked for, m3/s.
double GradientMethod::step() {
  equations_.clear();
  equations_.add_flow(net_.inlet, total_);
  for (std::size_t i = 0; i < flow_.size(); ++i) {
    const double g = 1 / losses_[i].slope, free = flow_[i] - g * losses_[i].head;
    equations_.add_pipe(i, g);
    equations_.add_flow(net_.pipes[i].from, -free);
    equations_.add_flow(net_.pipes[i].to, free);
  }
  equations_.solve();
  double change = 0;
  for (std::size_t i = 0; i < flow_.size(); ++i) {
    const double drop = head(net_.pipes[i].from) - head(net_.pipes[i].to);
    move_[i] = (drop - losses_[i].head) / losses_[i].slope;
    change = std::max(change, std::abs(move_[i]));
  }
  const double start = std::abs(work(move_));
  before_ = flow_;
  go(move_, 1);
  // Between regimes the curve bends sharply and a whole step can overshoot for ever: then halve until it does
  // not. The first step meets the nodes, and every later move keeps them met.
  if (balanced_)
    for (double part = 0.5; part > 1e-3 && work(move_) > 0.5 * start + 1e-9 * total_; part /= 2)
      go(move_, part);
  balanced_ = true;
  return change;
}

// Whether every pipe's loss meets the heads of its ends, as near as is asked for: then all paths close.
bool GradientMethod::closes() const {
  const double near = 1e-12 * std::abs(head(net_.inlet));
  for (std::size_t i = 0; i < flow_.size(); ++i) {
    const double drop = head(net_.pipes[i].from) - head(net_.pipes[i].to);
    if (!(std::abs(drop - losses_[i].head) < near)) return false;
  }
  return true;
}

void GradientMethod::go(const std::vector<double>& move, double part) {
  for (std::size_t i = 0; i < flow_.size(); ++i) {
    flow_[i] = before_[i] + part * move[i];
    losses_[i] = laws_[i].at(flow_[i]);
  }
}

// Work done along a move from where the flows are; the flows sought are where no move does any (the loss of
// head is the slope of a convex energy). Negative while the move still gains.
double GradientMethod::work(const std::vector<double>& move) const {
  double sum = 0;
  for (std::size_t i = 0; i < move.size(); ++i) sum += move[i] * losses_[i].head;
  return sum;
}

}  // namespace underlawn
