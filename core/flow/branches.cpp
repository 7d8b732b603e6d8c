// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/branches.h"

namespace underlawn {
namespace {

// The pipes at each node, one after another.
struct Incidence {
  std::vector<int> first, pipes;

  explicit Incidence(const Network& net) : first(net.nodes + 1, 0), pipes(2 * net.pipes.size()) {
    for (const NetPipe& p : net.pipes) {
      ++first[p.from];
      ++first[p.to];
    }
    for (int n = 0, sum = 0; n <= net.nodes; ++n) first[n] = sum += first[n];
    for (std::size_t i = net.pipes.size(); i-- > 0;) {
      pipes[--first[net.pipes[i].from]] = static_cast<int>(i);
      pipes[--first[net.pipes[i].to]] = static_cast<int>(i);
    }
  }
  int count(int node) const { return first[node + 1] - first[node]; }
};

}  // namespace

Branches branches_of(const Network& net) {
  const Incidence at(net);
  Branches out;
  std::vector<int> junction(net.nodes, -1);
  for (int n = 0; n < net.nodes; ++n)
    if (at.count(n) != 2 || n == net.inlet || n == net.outlet) {
      junction[n] = static_cast<int>(out.junctions.size());
      out.junctions.push_back(n);
    }
  out.inlet = junction[net.inlet];
  out.outlet = junction[net.outlet];
  std::vector<bool> taken(net.pipes.size(), false);
  for (int start : out.junctions)
    for (int i = at.first[start]; i < at.first[start + 1]; ++i) {
      int pipe = at.pipes[i], node = start;
      if (taken[pipe]) continue;
      Branch branch{junction[start], 0, {}};
      for (;;) {
        const NetPipe& p = net.pipes[pipe];
        taken[pipe] = true;
        branch.pipes.push_back({pipe, p.from == node});
        node = p.from == node ? p.to : p.from;
        if (junction[node] >= 0) break;
        pipe = at.pipes[at.first[node]] == pipe ? at.pipes[at.first[node] + 1] : at.pipes[at.first[node]];
      }
      branch.to = junction[node];
      out.branches.push_back(std::move(branch));
    }
  return out;
}

}  // namespace underlawn
