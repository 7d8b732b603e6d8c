// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/gradient.h"

#include <Eigen/SparseCholesky>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace underlawn {

// Conductances between the nodes' heads; the outlet, at 0, is left out. The pattern is ordered once.
class GradientMethod::Equations {
 public:
  explicit Equations(const Network& net) : outlet_(net.outlet), a_(net.nodes - 1, net.nodes - 1) {
    std::vector<Eigen::Triplet<double>> entries;
    for (int i = 0; i < net.nodes - 1; ++i) entries.emplace_back(i, i, 1.0);
    for (const NetPipe& p : net.pipes) {
      const int a = row(p.from), b = row(p.to);
      if (a >= 0 && b >= 0) entries.emplace_back(std::max(a, b), std::min(a, b), -1.0);
    }
    a_.setFromTriplets(entries.begin(), entries.end());
    solver_.analyzePattern(a_);
    for (const NetPipe& p : net.pipes) {
      const int a = row(p.from), b = row(p.to);
      places_.push_back({place(a, a), place(b, b), place(std::max(a, b), std::min(a, b))});
    }
    right_.resize(net.nodes - 1);
  }

  void clear() {
    std::fill(a_.valuePtr(), a_.valuePtr() + a_.nonZeros(), 0.0);
    right_.setZero();
  }
  void add_pipe(std::size_t pipe, double conductance) {
    const Places& at = places_[pipe];
    double* v = a_.valuePtr();
    if (at.from >= 0) v[at.from] += conductance;
    if (at.to >= 0) v[at.to] += conductance;
    if (at.between >= 0) v[at.between] -= conductance;
  }
  void add_flow(int node, double flow) {
    if (node != outlet_) right_[row(node)] += flow;
  }
  void solve() {
    solver_.factorize(a_);
    heads_ = solver_.solve(right_);
  }
  double head(int node) const { return node == outlet_ ? 0 : heads_[row(node)]; }

 private:
  struct Places {
    Eigen::Index from, to, between;  // in the matrix's values; -1 at the outlet
  };
  int row(int node) const { return node == outlet_ ? -1 : node - (node > outlet_); }
  Eigen::Index place(int row, int column) const {
    if (row < 0 || column < 0) return -1;
    const auto *first = a_.innerIndexPtr() + a_.outerIndexPtr()[column],
               *last = a_.innerIndexPtr() + a_.outerIndexPtr()[column + 1];
    return std::lower_bound(first, last, row) - a_.innerIndexPtr();
  }

  int outlet_;
  Eigen::SparseMatrix<double> a_;  // lower half
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> solver_;
  std::vector<Places> places_;
  Eigen::VectorXd right_, heads_;
};

GradientMethod::GradientMethod(const Network& net, const FluidProperties& fluid, double total)
    : net_(net),
      total_(total),
      before_(net.pipes.size()),
      move_(net.pipes.size()),
      losses_(net.pipes.size()),
      equations_(std::make_unique<Equations>(net)) {
  for (const NetPipe& p : net.pipes) {
    laws_.emplace_back(p, fluid);
    // A start that flows everywhere: a fifth of a metre a second.
    flow_.push_back(0.2 * std::numbers::pi / 4 * p.bore * p.bore);
    losses_[flow_.size() - 1] = laws_.back().at(flow_.back());
  }
}

GradientMethod::~GradientMethod() = default;

double GradientMethod::head(int node) const {
  return equations_->head(node);
}

int GradientMethod::run() {
  double before = total_;
  for (int i = 1; i <= 60; ++i) {
    const double change = step();
    // Settled, or as near as rounding lets it come.
    if (change < 1e-12 * total_ || (change < 1e-10 * total_ && change > 0.5 * before)) return i;
    before = change;
  }
  return 0;
}

// The largest change of a flow that the step asked for, m3/s.
double GradientMethod::step() {
  equations_->clear();
  equations_->add_flow(net_.inlet, total_);
  for (std::size_t i = 0; i < flow_.size(); ++i) {
    const double g = 1 / losses_[i].slope, free = flow_[i] - g * losses_[i].head;
    equations_->add_pipe(i, g);
    equations_->add_flow(net_.pipes[i].from, -free);
    equations_->add_flow(net_.pipes[i].to, free);
  }
  equations_->solve();
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
