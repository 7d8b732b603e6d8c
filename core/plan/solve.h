// SPDX-License-Identifier: GPL-3.0-or-later
// solve(plan) -> Outcome: a pure function in stages; Solver keeps the stages whose inputs did not change.
#pragma once

#include <memory>
#include <stop_token>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

Outcome solve(const Plan& plan, std::stop_token stop = {});

// The same answers as solve(), but a stage whose inputs are those of the last call is not run again.
class Solver {
 public:
  Solver();
  ~Solver();
  Outcome solve(const Plan& plan, std::stop_token stop = {});

 private:
  struct Kept;
  std::unique_ptr<Kept> kept_;
};

}  // namespace underlawn
