// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/node_equations.h"

#include <algorithm>

namespace underlawn {
namespace {

using Neighbours = std::vector<std::vector<int>>;

void join(Neighbours& near, int a, int b) {
  if (std::find(near[a].begin(), near[a].end(), b) != near[a].end()) return;
  near[a].push_back(b);
  near[b].push_back(a);
}

// The node of fewest neighbours that is not yet done.
int next_of(const Neighbours& near, const std::vector<bool>& done) {
  int best = -1;
  for (int n = 0; n < static_cast<int>(near.size()); ++n)
    if (!done[n] && (best < 0 || near[n].size() < near[best].size())) best = n;
  return best;
}

}  // namespace

NodeEquations::NodeEquations(const Network& net)
    : outlet_(net.outlet), diagonal_(net.nodes), right_(net.nodes) {
  for (const NetPipe& p : net.pipes) {
    from_.push_back(p.from);
    to_.push_back(p.to);
  }
  order(net);
}

void NodeEquations::order(const Network& net) {
  const int n = net.nodes;
  Neighbours near(n);
  for (const NetPipe& p : net.pipes)
    if (p.from != outlet_ && p.to != outlet_) join(near, p.from, p.to);
  std::vector<bool> done(n, false);
  done[outlet_] = true;
  std::vector<int> entry(static_cast<std::size_t>(n) * n, -1);  // of both ends
  for (int at; (at = next_of(near, done)) >= 0;) {
    done[at] = true;
    Pivot pivot{at, static_cast<int>(entries_.size()), 0, 0};
    for (int other : near[at]) {
      entry[at * n + other] = entry[other * n + at] = static_cast<int>(entries_.size());
      entries_.push_back({other, 0});
      std::erase(near[other], at);
    }
    for (std::size_t i = 0; i < near[at].size(); ++i)
      for (std::size_t j = 0; j < i; ++j) join(near, near[at][i], near[at][j]);
    pivot.last = static_cast<int>(entries_.size());
    pivots_.push_back(pivot);
  }
  for (Pivot& p : pivots_) {
    p.target = static_cast<int>(targets_.size());
    for (int i = p.first; i < p.last; ++i)
      for (int j = p.first; j < i; ++j) targets_.push_back(entry[entries_[i].node * n + entries_[j].node]);
  }
  for (const NetPipe& p : net.pipes) places_.push_back(entry[p.from * n + p.to]);
}

void NodeEquations::clear() {
  std::fill(diagonal_.begin(), diagonal_.end(), 0.0);
  std::fill(right_.begin(), right_.end(), 0.0);
  for (Entry& e : entries_) e.value = 0;
}

void NodeEquations::add_pipe(std::size_t pipe, double conductance) {
  diagonal_[from_[pipe]] += conductance;
  diagonal_[to_[pipe]] += conductance;
  if (places_[pipe] >= 0) entries_[places_[pipe]].value -= conductance;
}

void NodeEquations::solve() {
  right_[outlet_] = 0;
  for (const Pivot& p : pivots_) {
    const double over = 1 / diagonal_[p.node];
    const int* target = targets_.data() + p.target;
    for (int i = p.first; i < p.last; ++i) {
      const double value = entries_[i].value, factor = value * over;
      for (int j = p.first; j < i; ++j) entries_[*target++].value -= value * entries_[j].value;
      diagonal_[entries_[i].node] -= value * factor;
      right_[entries_[i].node] -= factor * right_[p.node];
      entries_[i].value = factor;
    }
  }
  for (auto p = pivots_.rbegin(); p != pivots_.rend(); ++p) {
    double head = right_[p->node] / diagonal_[p->node];
    for (int i = p->first; i < p->last; ++i) head -= entries_[i].value * right_[entries_[i].node];
    right_[p->node] = head;
  }
}

}  // namespace underlawn
