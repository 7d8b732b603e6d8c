// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/hydraulics.h"

#include <algorithm>
#include <numbers>

#include "base/quantity.h"
#include "flow/flow_remarks.h"
#include "flow/network_solver.h"

namespace underlawn {
namespace {

double resistance_of(const LoopPipe& pipe, const NetPipe& p, const PipeFlow& q,
                     const FluidProperties& fluid) {
  const double re = std::max(q.reynolds, 1.0);
  const double film =
      nusselt(re, fluid.prandtl(), friction_factor(re, p.roughness / p.bore)) * fluid.conductivity / p.bore;
  return fluid_resistance(pipe.size.outside_diameter, p.bore, kPolyethyleneConductivity, film);
}

void add_resistances(FlowState& s, const LoopNetwork& loop) {
  s.resistance.push_back(0);
  for (std::size_t i = 1; i < loop.pipes.size(); ++i)
    s.resistance.push_back(resistance_of(loop.pipes[i], loop.network.pipes[i], s.flow.pipes[i], s.fluid));
}

std::optional<PumpState> pump_state(NetworkSolver& solver, const FlowWishes& w,
                                    std::vector<Trouble>& refusals) {
  if (w.circulator.curve.empty()) return std::nullopt;
  const SystemCurve system = [&](double q) { return solver.solve(q) ? solver.head_loss() : 1e9; };
  const auto duty = duty_point(w.circulator, system);
  if (!duty) {
    refusals.push_back(duty.error());
    return std::nullopt;
  }
  PumpState p;
  p.duty = *duty;
  p.w_per_kw = 1000 * duty->power / w.capacity;
  p.grade = pump_grade(duty->power, w.capacity);
  for (double part : {1.0, 0.75, 0.5})
    if (const auto slower = speed_for(w.circulator, system, part * w.design_flow))
      p.slower.push_back(*slower);
  return p;
}

double volume_in(const LoopNetwork& loop) {
  double sum = 0;
  for (std::size_t i = 1; i < loop.network.pipes.size(); ++i) {
    const NetPipe& p = loop.network.pipes[i];
    sum += std::numbers::pi / 4 * p.bore * p.bore * p.length;
  }
  return sum;
}

struct SolvedState {
  FlowState state;
  NetworkSolver solver;
};

Result<SolvedState> solved_state(const LoopNetwork& loop, const FlowWishes& w, double temperature) {
  FlowState s;
  s.temperature = temperature;
  const auto fluid = fluid_properties(w.fluid, w.mass_fraction, temperature);
  if (!fluid) return refuse(fluid.error());
  s.fluid = *fluid;
  auto solver = NetworkSolver::of(loop.network, s.fluid);
  if (!solver) return refuse(solver.error());
  if (auto ok = solver->solve(w.design_flow); !ok) return refuse(ok.error());
  s.flow = solver->all();
  s.imbalance = imbalance(s.flow, loop.circuits);
  add_resistances(s, loop);
  return SolvedState{std::move(s), std::move(*solver)};
}

}  // namespace

Result<FlowState> flow_state(const LoopNetwork& loop, const FlowWishes& w, double temperature) {
  auto solved = solved_state(loop, w, temperature);
  if (!solved) return refuse(solved.error());
  return std::move(solved->state);
}

Result<Flow> solve_flow(const Layout& layout, const Wishes& wishes, const FlowWishes& w,
                        const HeaderSizes& sizes) {
  const auto troubles = flow_troubles(w);
  if (!troubles.empty()) return refuse(troubles.front());
  auto loop = loop_network(layout, wishes, w, sizes);
  if (!loop) return refuse(loop.error());
  Flow f;
  f.loop = std::move(*loop);
  f.sizes = sizes;
  auto design = solved_state(f.loop, w, w.design_temperature);
  if (!design) return refuse(design.error());
  auto coldest = solved_state(f.loop, w, w.coldest_temperature);
  if (!coldest) return refuse(coldest.error());
  f.pump = pump_state(design->solver, w, f.pump_refusals);
  f.coldest_pump = pump_state(coldest->solver, w, f.pump_refusals);
  f.design = std::move(design->state);
  f.coldest = std::move(coldest->state);
  f.volume = volume_in(f.loop);
  const auto antifreeze = antifreeze_for(w, f.volume);
  if (!antifreeze) return refuse(antifreeze.error());
  f.antifreeze = *antifreeze;
  if (f.design.imbalance > w.most_imbalance) f.remedies = balance_remedies(layout, wishes, w, sizes);
  return f;
}

Result<Flow> solve_flow(const Layout& layout, const Wishes& wishes, const FlowWishes& w) {
  if (!w.run_size.empty() && !w.header_sizes.empty()) {
    const auto sizes = typed_sizes(wishes, w);
    if (!sizes) return refuse(sizes.error());
    return solve_flow(layout, wishes, w, *sizes);
  }
  const auto choice = design_header(layout, wishes, w);
  if (!choice) return refuse(choice.error());
  auto f = solve_flow(layout, wishes, w, choice->sizes);
  if (f) f->header = *choice;
  return f;
}

}  // namespace underlawn
