// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/hydraulics.h"

#include <numbers>

#include "base/quantity.h"
#include "flow/flow_remarks.h"

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
  double sum[2] = {0, 0}, length[2] = {0, 0};
  s.resistance.push_back(0);
  for (std::size_t i = 1; i < loop.pipes.size(); ++i) {
    const NetPipe& p = loop.network.pipes[i];
    s.resistance.push_back(resistance_of(loop.pipes[i], p, s.flow.pipes[i], s.fluid));
    const int kind = loop.pipes[i].part == LoopPart::circuit ? 0 : 1;
    sum[kind] += p.length * s.resistance.back();
    length[kind] += p.length;
  }
  s.circuit_resistance = length[0] > 0 ? sum[0] / length[0] : 0;
  s.header_resistance = length[1] > 0 ? sum[1] / length[1] : 0;
}

std::optional<PumpState> pump_state(const LoopNetwork& loop, const FlowWishes& w,
                                    const FluidProperties& fluid, std::vector<Trouble>& refusals) {
  if (w.circulator.curve.empty()) return std::nullopt;
  const SystemCurve system = [&](double q) {
    const auto solved = solve_network(loop.network, fluid, q);
    return solved ? solved->head_loss : 1e9;
  };
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

void add_volumes(Flow& f) {
  for (std::size_t i = 0; i < f.loop.pipes.size(); ++i) {
    const NetPipe& p = f.loop.network.pipes[i];
    f.volumes.push_back(i == 0 ? 0 : std::numbers::pi / 4 * p.bore * p.bore * p.length);
    f.volume += f.volumes.back();
  }
}

Result<void> add_states(Flow& f, const FlowWishes& w) {
  for (auto [state, temperature] :
       {std::pair{&f.design, w.design_temperature}, std::pair{&f.coldest, w.coldest_temperature}}) {
    auto solved = flow_state(f.loop, w, temperature);
    if (!solved) return refuse(solved.error());
    *state = std::move(*solved);
  }
  return {};
}

}  // namespace

Result<FlowState> flow_state(const LoopNetwork& loop, const FlowWishes& w, double temperature) {
  FlowState s;
  s.temperature = temperature;
  const auto fluid = fluid_properties(w.fluid, w.mass_fraction, temperature);
  if (!fluid) return refuse(fluid.error());
  s.fluid = *fluid;
  auto flow = solve_network(loop.network, s.fluid, w.design_flow);
  if (!flow) return refuse(flow.error());
  s.flow = std::move(*flow);
  s.imbalance = imbalance(s.flow, loop.circuits);
  add_resistances(s, loop);
  return s;
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
  if (auto ok = add_states(f, w); !ok) return refuse(ok.error());
  f.pump = pump_state(f.loop, w, f.design.fluid, f.pump_refusals);
  f.coldest_pump = pump_state(f.loop, w, f.coldest.fluid, f.pump_refusals);
  add_volumes(f);
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
