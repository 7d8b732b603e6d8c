// SPDX-License-Identifier: GPL-3.0-or-later
// Heads at the junctions of a small network from the conductances of its branches: a symmetric positive
// system, eliminated in an order found once (least degree first), for few and the same places fill every
// time. A general sparse solver spends several times longer on a dozen circuits.
#pragma once

#include "flow/branches.h"

namespace underlawn {

class NodeEquations {
 public:
  explicit NodeEquations(const Branches& branches);

  // Conductance of each branch, m3/s per m, > 0.
  void factor(const std::vector<double>& conductance);
  // Heads for what flows into each junction, in its place; the outlet's is not read and becomes 0. After
  // factor().
  void solve(std::vector<double>& inflow_then_head) const;

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
  struct Place {
    int from, to, entry;  // entry -1 at the outlet
  };
  void order(const Branches& branches);

  int outlet_;
  std::vector<double> diagonal_;  // then one over it
  std::vector<Entry> entries_;
  std::vector<Pivot> pivots_;
  std::vector<int> targets_;
  std::vector<Place> places_;  // of each branch; from = to where it takes no part
};

}  // namespace underlawn
