// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/solve.h"

#include "plan/checks/check.h"
#include "plan/figures/figures.h"
#include "plan/fingerprint.h"
#include "plan/laid_solver.h"
#include "plan/stages/stages.h"

namespace underlawn {

void Stages::solve_report(const Plan& plan, Outcome& outcome, const std::stop_token& stop) {
  const auto in = [&](Plan part) {
    return LastIn{std::move(part), coil.serial, layout.serial,    dig.serial,  order.serial,
                  calendar.serial, work.serial, stake_out.serial, flow.serial, temperatures.serial};
  };
  outcome.findings = checks.run(in(for_checks(plan)), runs.checks, stop,
                                [&](const LastIn& i) { return run_checks(i.plan, outcome); });
  if (stop.stop_requested()) return;
  outcome.figures = figures.run(in(for_figures(plan)), runs.figures, stop,
                                [&](const LastIn& i) { return make_figures(i.plan, outcome); });
}

Outcome Stages::run_all(const Plan& plan, const Layout* laid, const std::stop_token& stop) {
  Outcome outcome;
  outcome.fingerprint = fingerprint(plan);
  if (stop.stop_requested()) return outcome;
  solve_ground(plan, laid, outcome, stop);
  if (stop.stop_requested()) return outcome;
  solve_dig(plan, outcome, stop);
  if (stop.stop_requested()) return outcome;
  solve_flow_stage(plan, outcome, stop);
  if (stop.stop_requested()) return outcome;
  solve_crew(plan, outcome, stop);
  if (stop.stop_requested()) return outcome;
  solve_heat(plan, outcome, stop);
  if (stop.stop_requested()) return outcome;
  solve_prices(plan, outcome);
  solve_report(plan, outcome, stop);
  return outcome;
}

struct Solver::Kept {
  Stages stages;
};

Solver::Solver() : kept_(std::make_unique<Kept>()) {}
Solver::~Solver() = default;
const StageRuns& Solver::runs() const {
  return kept_->stages.runs;
}
Outcome Solver::solve(const Plan& plan, std::stop_token stop) {
  return kept_->stages.run_all(plan, nullptr, stop);
}

LaidSolver::LaidSolver() : stages_(std::make_unique<Stages>()) {}
LaidSolver::~LaidSolver() = default;
Outcome LaidSolver::solve(const Plan& plan, const Layout& laid, std::stop_token stop) {
  return stages_->run_all(plan, &laid, stop);
}

Outcome solve(const Plan& plan, std::stop_token stop) {
  return Solver().solve(plan, std::move(stop));
}

}  // namespace underlawn
