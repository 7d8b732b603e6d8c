// SPDX-License-Identifier: GPL-3.0-or-later
// Solver for a loop that lies already.
#pragma once

#include <memory>
#include <stop_token>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

struct Stages;

// What Solver::solve gives, of trenches, header and run that lie as they are, whatever the wishes would
// place. Stages whose inputs are those of the last call are not run again. Defined beside Solver.
class LaidSolver {
 public:
  LaidSolver();
  ~LaidSolver();
  Outcome solve(const Plan& plan, const Layout& laid, std::stop_token stop = {});

 private:
  std::unique_ptr<Stages> stages_;
};

}  // namespace underlawn
