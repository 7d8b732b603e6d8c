// SPDX-License-Identifier: GPL-3.0-or-later
// Heads at the nodes of a small network from the conductances of its pipes: a symmetric positive system,
// eliminated in an order found once (least degree first), for few and the same places fill every time.
// A general sparse solver spends several times longer on a dozen circuits.
#pragma once

#include <vector>

#include "flow/network.h"

namespace underlawn {

class NodeEquations {
 public:
  explicit NodeEquations(const Network& network);

  void clear();
  void add_pipe(std::size_t pipe, double conductance);  // m3/s per m, > 0
  void add_flow(int node, double flow) { right_[node] += flow; }
  void solve();                                         // uses up what was added
  double head(int node) const { return right_[node]; }  // m, outlet 0

 private:
  struct Entry {
    int node;      // the other end
    double value;  // what is left of the matrix there, then the factor
  };
  struct Pivot {
    int node;
    int first, last;  // entries
    int target;       // in targets_: the entries that pairs of its entries change
  };
  void order(const Network& network);

  int outlet_;
  std::vector<double> diagonal_, right_;
  std::vector<Entry> entries_;
  std::vector<Pivot> pivots_;
  std::vector<int> targets_;
  std::vector<int> places_;  // entry of each pipe, -1 at the outlet
  std::vector<int> from_, to_;
};

}  // namespace underlawn
