// SPDX-License-Identifier: GPL-3.0-or-later
// solve(plan) -> Outcome: a pure function in stages; Solver keeps the stages whose inputs did not change.
//
//   plan ──► troubles      wishes ──► coil ──► layout ──► dig ──► order of digging ──┬──► checks
//                                     site ──────┘  ├───► stake_out ────────────────┤
//                          flow wishes ─────────────┼───► flow ──► calendar ──► work ┼──► figures
//                          thermal ──► surroundings ┴──────┴───► temperatures ───────┘
#pragma once

#include <memory>
#include <stop_token>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

// Asked to stop, returns as soon as the running stage does (the layout stops midway); that outcome is only
// part of the answer and for the caller to throw away.
Outcome solve(const Plan& plan, std::stop_token stop = {});

// How often each stage has been run.
struct StageRuns {
  int troubles = 0;
  int coil = 0;
  int layout = 0;
  int dig = 0;
  int stake_out = 0;
  int flow = 0;
  int surroundings = 0;
  int temperatures = 0;
  int checks = 0;
  int figures = 0;
  int work = 0;
  int terrain = 0;
  int order = 0;
  int calendar = 0;
  bool operator==(const StageRuns&) const = default;
};

// The same answers as solve(), but a stage whose inputs are those of the last call is not run again. Each
// stage is handed only the part of the plan that it names, so nothing else can reach it.
class Solver {
 public:
  Solver();
  ~Solver();
  Outcome solve(const Plan& plan, std::stop_token stop = {});
  const StageRuns& runs() const;

 private:
  struct Kept;
  std::unique_ptr<Kept> kept_;
};

}  // namespace underlawn
