// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/circulation_of.h"

#include "pipe/pipe_size.h"

namespace underlawn {

namespace {

// Wall and film of all pipe in the ground, weighted by length, at the coldest fluid: films are thickest then.
double mean_resistance(const Flow& flow) {
  double sum = 0, length = 0;
  for (std::size_t i = 1; i < flow.loop.pipes.size(); ++i) {
    sum += flow.loop.network.pipes[i].length * flow.coldest.resistance[i];
    length += flow.loop.network.pipes[i].length;
  }
  return sum / length;
}

double reynolds_in_coils(const Flow& flow) {
  double sum = 0;
  for (int c : flow.loop.circuits) sum += flow.coldest.flow.pipes[c].reynolds;
  return sum / static_cast<double>(flow.loop.circuits.size());
}

// At the design flow; the circulator's power where it meets the pipes.
Circulation in_the_loop(const Flow& flow, const FlowWishes& w) {
  const FluidProperties& fluid = flow.coldest.fluid;
  return {w.design_flow * fluid.density * fluid.specific_heat, mean_resistance(flow), reynolds_in_coils(flow),
          flow.coldest_pump ? flow.coldest_pump->duty.power : 0};
}

// Where there is no way to the house yet: the flow shared equally by the circuits.
Circulation equal_shares(const FlowWishes& w, const PipeSize& pipe, std::size_t circuits) {
  const auto fluid = fluid_properties(w.fluid, w.mass_fraction, w.coldest_temperature);
  if (!fluid || circuits == 0) return {};
  const Film film = film_in(pipe, *fluid, w.design_flow / static_cast<double>(circuits));
  const double power = w.circulator.curve.empty() ? 0 : pump_power(w.circulator, w.design_flow);
  return {w.design_flow * fluid->density * fluid->specific_heat, film.resistance, film.reynolds, power};
}

}  // namespace

Circulation circulation_of(const Plan& plan, const Flow* flow, const Layout& layout) {
  const auto pipe = find_pipe(plan.wishes.pipe);
  if (!pipe) return {};
  return flow != nullptr ? in_the_loop(*flow, plan.flow)
                         : equal_shares(plan.flow, *pipe, layout.trenches.size());
}

}  // namespace underlawn
