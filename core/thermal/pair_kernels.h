// SPDX-License-Identifier: GPL-3.0-or-later
// How coils and pipes heat one another, seen from above.
#pragma once

#include <vector>

#include "thermal/kernel_nodes.h"
#include "thermal/step_response.h"

namespace underlawn {

// H(u) = double integral over two things of exp(-u^2 rho^2), m2 at each node, for every pair of a field.
// Depths, pipe sizes and soil are no part of it, so a pair is computed again only when one of the two has
// moved.
class PairKernels {
 public:
  // Things are the coils, then the pipes, in order.
  void update(const PipesInGround& pipes);
  // 0 <= i < j < number of things.
  const KernelTable& of(std::size_t i, std::size_t j) const { return tables_[j * (j - 1) / 2 + i]; }

 private:
  PipesInGround pipes_;              // what the tables are of
  std::vector<KernelTable> tables_;  // by j, then i
};

}  // namespace underlawn
