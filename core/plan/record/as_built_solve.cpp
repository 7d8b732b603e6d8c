// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/as_built_solve.h"

#include <algorithm>
#include <cmath>

#include "plan/keeping.h"
#include "plan/record/built_findings.h"
#include "plan/record/built_holds.h"

namespace underlawn {

namespace {

// Of both sides, what a designer asks after first.
constexpr const char* kCompared[] = {"layout.circuits_placed",
                                     "heat.pipe",
                                     "heat.depth",
                                     "run.length",
                                     "header.length",
                                     "heat.coldest",
                                     "heat.last.warmest",
                                     "heat.seasonal_heating",
                                     "heat.backup",
                                     "flow.design.head",
                                     "flow.coldest.head",
                                     "flow.design.least_circuit",
                                     "flow.design.most_circuit",
                                     "flow.design.imbalance",
                                     "flow.pump.flow",
                                     "flow.pump.power",
                                     "flow.volume",
                                     "flow.concentrate",
                                     "flow.freezing_point",
                                     "flow.purge.flow",
                                     "flow.purge.head"};

std::vector<Change> changes_of(const Outcome& planned, const Outcome& built) {
  std::vector<Change> all;
  for (const char* key : kCompared) {
    const Figure *a = planned.figures.find(key), *b = built.figures.find(key);
    if (a != nullptr && b != nullptr) all.push_back({key, b->label, b->quantity, a->value, b->value});
  }
  return all;
}

// Mean of run and legs by length.
double built_run_depth(double wished, const Layout& layout) {
  double metres = layout.run.length, sum = metres * layout.run.depth.value_or(wished);
  for (std::size_t i = 0; i < layout.header.legs.size(); ++i) {
    const double leg = length(layout.header.legs[i]);
    metres += leg;
    sum += leg * depth_of_leg(layout.header, i, wished);
  }
  return metres > 0 ? sum / metres : wished;
}

// What was laid is not designed again.
void fix_sizes(FlowWishes& flow, const Flow& planned, const AsBuilt& built) {
  flow.run_size = built.run_pipe.empty() ? planned.sizes.run.name : built.run_pipe;
  flow.header_sizes.clear();
  if (!built.header_pipe.empty())
    flow.header_sizes = {built.header_pipe};
  else
    for (const PipeSize& size : planned.sizes.steps) flow.header_sizes.push_back(size.name);
  flow.step_down = flow.header_sizes.size() > 1;
}

}  // namespace

std::vector<GivenTrench> given_from(const Layout& layout) {
  std::vector<GivenTrench> all;
  for (const Trench& t : layout.trenches)
    all.push_back({t.head, t.end, t.depth, t.coil.coil_length, t.bends});
  return all;
}

Plan built_plan(const Plan& plan, const Outcome& planned, const BuiltLoop& loop) {
  Plan p = plan;
  p.site = measured_site(plan);
  p.wishes.given = given_from(loop.layout);
  p.wishes.locked.clear();
  forget_shown(p.wishes);
  p.wishes.run_depth = built_run_depth(plan.wishes.run_depth, loop.layout);
  if (planned.flow != nullptr) fix_sizes(p.flow, *planned.flow, plan.as_built);
  return p;
}

AsBuiltAnswer solve_as_built(const Plan& plan, const Outcome& planned, LaidSolver& solver,
                             std::stop_token stop) {
  AsBuiltAnswer answer;
  answer.loop = built_loop(plan, planned.layout);
  answer.plan = built_plan(plan, planned, answer.loop);
  const Outcome built = solver.solve(answer.plan, answer.loop.layout, std::move(stop));
  answer.outcome = std::make_shared<const Outcome>(built);
  answer.holds = holds_of(plan, planned, built);
  answer.changes = changes_of(planned, built);
  answer.findings = built_findings(planned, built);
  return answer;
}

AsBuiltAnswer solve_as_built(const Plan& plan, const Outcome& planned, std::stop_token stop) {
  LaidSolver solver;
  return solve_as_built(plan, planned, solver, std::move(stop));
}

}  // namespace underlawn
