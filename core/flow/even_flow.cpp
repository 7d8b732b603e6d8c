// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/even_flow.h"

#include <Eigen/Dense>
#include <algorithm>

#include "flow/pipe_law.h"

namespace underlawn {
namespace {

constexpr std::size_t kMostRefined = 40;  // circuits

double mean_of(const std::vector<double>& values) {
  double sum = 0;
  for (double v : values) sum += v;
  return sum / static_cast<double>(values.size());
}

}  // namespace

LoopNetwork SizedLoops::with(int run, const std::vector<int>& header) const {
  LoopNetwork loop = loops[run];
  for (std::size_t i = 0; i < group.size(); ++i) {
    if (group[i] < 0) continue;
    const LoopNetwork& from = loops[header[group[i]]];
    loop.network.pipes[i] = from.network.pipes[i];
    loop.pipes[i] = from.pipes[i];
  }
  return loop;
}

EvenFlow::EvenFlow(const SizedLoops& all, const FluidProperties& fluid, double total, double spread)
    : each_(total / static_cast<double>(all.loops[0].circuits.size())) {
  const LoopNetwork& loop = all.loops[0];
  const std::size_t circuits = loop.circuits.size();
  const auto loss = [&](std::size_t size, int pipe) {
    return PipeLaw(all.loops[size].network.pipes[pipe], fluid).at(each_ * loop.pipes[pipe].carries);
  };
  // Supply and return are trees: one pipe leads to a node of the supply, one away from a node of the return.
  std::vector<int> into(loop.network.nodes, -1), out_of(loop.network.nodes, -1);
  for (std::size_t i = 0; i < loop.pipes.size(); ++i) {
    into[loop.network.pipes[i].to] = static_cast<int>(i);
    out_of[loop.network.pipes[i].from] = static_cast<int>(i);
  }
  ways_.assign(all.groups,
               std::vector<std::vector<double>>(all.sizes.size(), std::vector<double>(circuits, 0.0)));
  coils_.assign(circuits, 0.0);
  slopes_.assign(circuits, 0.0);
  std::vector<std::vector<int>> users(loop.pipes.size());
  for (std::size_t c = 0; c < circuits; ++c) {
    const auto count = [&](int pipe) {
      const int group = all.group[pipe];
      users[pipe].push_back(static_cast<int>(c));
      if (group == -1) {
        const PipeLaw law(loop.network.pipes[pipe], fluid);
        coils_[c] += law.at(each_).head;
        slopes_[c] += (law.at(each_ * (1 + spread / 2)).head - law.at(each_ * (1 - spread / 2)).head) /
                      (each_ * spread);
      }
      for (std::size_t s = 0; group >= 0 && s < all.sizes.size(); ++s)
        ways_[group][s][c] += loss(s, pipe).head;
    };
    const int coil = loop.circuits[c];
    for (int pipe = coil; pipe > 0; pipe = into[loop.network.pipes[pipe].from]) count(pipe);
    for (int node = loop.network.pipes[coil].to; out_of[node] >= 0;
         node = loop.network.pipes[out_of[node]].to)
      count(out_of[node]);
  }
  for (double slope : slopes_) conductance_ += 1 / slope;
  for (double slope : slopes_) shares_.push_back(1 / (slope * conductance_));
  mean_coil_ = mean_of(coils_);
  for (const auto& group : ways_) {
    mean_ways_.emplace_back();
    for (const auto& way : group) mean_ways_.back().push_back(mean_of(way));
  }
  if (circuits <= kMostRefined) share(all, fluid, users);
  heat_pump_ = loss(0, 0).head;
  for (std::size_t s = 0; s < all.sizes.size(); ++s) {
    double sum = 0;
    for (std::size_t i = 0; i < loop.pipes.size(); ++i)
      if (i == 0 || all.group[i] == -2) sum += loss(s, static_cast<int>(i)).head;
    runs_.push_back(sum);
  }
}

void EvenFlow::share(const SizedLoops& all, const FluidProperties& fluid,
                     const std::vector<std::vector<int>>& users) {
  const std::size_t n = coils_.size();
  shared_.assign(all.groups,
                 std::vector<std::vector<double>>(all.sizes.size(), std::vector<double>(n * n, 0.0)));
  for (std::size_t i = 0; i < users.size(); ++i)
    for (std::size_t s = 0; all.group[i] >= 0 && s < all.sizes.size(); ++s) {
      const double flow = each_ * static_cast<double>(users[i].size());
      const double slope = PipeLaw(all.loops[s].network.pipes[i], fluid).at(flow).slope;
      for (int a : users[i])
        for (int b : users[i]) shared_[all.group[i]][s][a * n + b] += slope;
    }
}

// The ways' slopes J and heads H: flows change by J^-1 (l - H), l such that they add up to nothing.
double EvenFlow::refined_imbalance(const std::vector<double>& ways, const std::vector<int>& header) const {
  const auto n = static_cast<Eigen::Index>(ways.size());
  Eigen::MatrixXd slopes = Eigen::Map<const Eigen::VectorXd>(slopes_.data(), n).asDiagonal();
  for (std::size_t g = 0; g < header.size(); ++g)
    slopes += Eigen::Map<const Eigen::MatrixXd>(shared_[g][header[g]].data(), n, n);
  const Eigen::LLT<Eigen::MatrixXd> factors(slopes);
  const Eigen::VectorXd of_heads = factors.solve(Eigen::Map<const Eigen::VectorXd>(ways.data(), n));
  const Eigen::VectorXd of_one = factors.solve(Eigen::VectorXd::Ones(n));
  const Eigen::VectorXd more = of_heads.sum() / of_one.sum() * of_one - of_heads;
  return (more.maxCoeff() - more.minCoeff()) / each_;
}

double EvenFlow::imbalance(const std::vector<double>& ways) const {
  double mean = 0;
  for (std::size_t c = 0; c < ways.size(); ++c) mean += ways[c] * shares_[c];
  double low = 1e300, high = -1e300;
  for (std::size_t c = 0; c < ways.size(); ++c) {
    const double more = (mean - ways[c]) * shares_[c];
    low = std::min(low, more);
    high = std::max(high, more);
  }
  return (high - low) * conductance_ / each_;
}

}  // namespace underlawn
