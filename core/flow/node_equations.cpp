// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/node_equations.h"

#include <algorithm>
#include <functional>
#include <queue>

namespace underlawn {
namespace {

struct Near {
  int node, entry;  // entry: where the matrix has the pair
};
using Neighbours = std::vector<std::vector<Near>>;

int entry_of(const Neighbours& near, int a, int b) {
  for (const Near& n : near[a])
    if (n.node == b) return n.entry;
  return -1;
}

// The pair's number, a new one where it has none.
int join(Neighbours& near, int a, int b, int& pairs) {
  if (const int known = entry_of(near, a, b); known >= 0) return known;
  near[a].push_back({b, pairs});
  near[b].push_back({a, pairs});
  return pairs++;
}

}  // namespace

NodeEquations::NodeEquations(const Branches& net) : outlet_(net.outlet), diagonal_(net.junctions.size()) {
  order(net);
}

void NodeEquations::order(const Branches& net) {
  const int n = static_cast<int>(net.junctions.size());
  Neighbours near(n);
  int pairs = 0;
  for (const Branch& b : net.branches) {
    const bool inner = b.from != outlet_ && b.to != outlet_ && b.from != b.to;
    places_.push_back({b.from, b.to, inner ? join(near, b.from, b.to, pairs) : -1});
  }
  using Degree = std::pair<std::size_t, int>;
  std::priority_queue<Degree, std::vector<Degree>, std::greater<>> open;
  for (int i = 0; i < n; ++i)
    if (i != outlet_) open.push({near[i].size(), i});
  std::vector<bool> done(n, false);
  std::vector<int> entry_of_pair;  // where elimination puts each pair
  while (!open.empty()) {
    const auto [degree, at] = open.top();
    open.pop();
    if (done[at] || degree != near[at].size()) continue;
    done[at] = true;
    Pivot pivot{at, static_cast<int>(entries_.size()), 0, static_cast<int>(targets_.size())};
    for (const Near& other : near[at]) {
      entry_of_pair.resize(std::max<std::size_t>(entry_of_pair.size(), other.entry + 1), -1);
      entry_of_pair[other.entry] = static_cast<int>(entries_.size());
      entries_.push_back({other.node, 0});
      std::erase_if(near[other.node], [at = at](const Near& x) { return x.node == at; });
    }
    for (std::size_t i = 0; i < near[at].size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        targets_.push_back(join(near, near[at][i].node, near[at][j].node, pairs));
    for (const Near& other : near[at]) open.push({near[other.node].size(), other.node});
    pivot.last = static_cast<int>(entries_.size());
    pivots_.push_back(pivot);
  }
  for (int& t : targets_) t = entry_of_pair[t];
  for (Place& p : places_)
    if (p.entry >= 0) p.entry = entry_of_pair[p.entry];
}

void NodeEquations::factor(const std::vector<double>& conductance) {
  std::fill(diagonal_.begin(), diagonal_.end(), 0.0);
  for (Entry& e : entries_) e.value = 0;
  for (std::size_t i = 0; i < places_.size(); ++i) {
    const Place& p = places_[i];
    if (p.from == p.to) continue;
    diagonal_[p.from] += conductance[i];
    diagonal_[p.to] += conductance[i];
    if (p.entry >= 0) entries_[p.entry].value -= conductance[i];
  }
  for (const Pivot& p : pivots_) {
    const double over = diagonal_[p.node] = 1 / diagonal_[p.node];
    const int* target = targets_.data() + p.target;
    for (int i = p.first; i < p.last; ++i) {
      const double value = entries_[i].value;
      for (int j = p.first; j < i; ++j) entries_[*target++].value -= value * entries_[j].value;
      diagonal_[entries_[i].node] -= value * value * over;
      entries_[i].value = value * over;
    }
  }
}

void NodeEquations::solve(std::vector<double>& right) const {
  for (const Pivot& p : pivots_)
    for (int i = p.first; i < p.last; ++i) right[entries_[i].node] -= entries_[i].value * right[p.node];
  right[outlet_] = 0;
  for (auto p = pivots_.rbegin(); p != pivots_.rend(); ++p) {
    double head = right[p->node] * diagonal_[p->node];
    for (int i = p->first; i < p->last; ++i) head -= entries_[i].value * right[entries_[i].node];
    right[p->node] = head;
  }
}

}  // namespace underlawn
