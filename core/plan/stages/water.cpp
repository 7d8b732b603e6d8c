// SPDX-License-Identifier: GPL-3.0-or-later
// Flow in the pipes, and the temperatures it comes back with.
#include "plan/circulation_of.h"
#include "plan/coil_ends.h"
#include "plan/coldest_fluid.h"
#include "plan/stages/stages.h"
#include "thermal/loop_geometry.h"

namespace underlawn {

namespace {

FlowMade make_flow(const FlowIn& in, const Layout& layout) {
  if (!in.sound || layout.trenches.empty()) return {};
  auto made = solve_flow(layout, in.wishes, in.flow);
  if (!made) return {nullptr, nullptr, made.error()};
  // Designing the header has flushed it already.
  auto purge = made->header ? Result<Purge>(made->header->flushing) : purge_loop(made->loop, in.flow);
  return {std::make_shared<const Flow>(std::move(*made)),
          purge ? std::make_shared<const Purge>(std::move(*purge)) : nullptr, std::nullopt};
}

}  // namespace

void Stages::solve_flow_stage(const Plan& plan, Outcome& outcome, const std::stop_token& stop) {
  FlowIn in{layout.serial, for_temperatures(plan.wishes), flow_as_cut(plan, outcome.layout, outcome.dig),
            !troubles.out.flow && !troubles.out.wishes};
  const FlowMade& made =
      flow.run(std::move(in), runs.flow, stop, [&](const FlowIn& i) { return make_flow(i, outcome.layout); });
  outcome.flow = made.flow;
  outcome.purge = made.purge;
  outcome.flow_refusal = made.refusal;
}

void Stages::solve_heat(const Plan& plan, Outcome& outcome, const std::stop_token& stop) {
  outcome.surroundings = surroundings.run(plan.thermal, runs.surroundings, stop, [](const ThermalWishes& w) {
    auto made = make_surroundings(w);
    return made ? std::make_shared<const Surroundings>(std::move(*made)) : nullptr;
  });
  TemperaturesIn in{
      layout.serial, surroundings.serial, for_temperatures(plan.wishes), plan.thermal,
      troubles.out.flow ? Circulation{} : circulation_of(plan, outcome.flow.get(), outcome.layout)};
  outcome.temperatures =
      temperatures.run(std::move(in), runs.temperatures, stop, [&](const TemperaturesIn& i) {
        return outcome.surroundings == nullptr || i.circulation.heat_flow_rate <= 0
                   ? nullptr
                   : std::make_shared<const Temperatures>(
                         solve_temperatures(pipes_in_ground(outcome.layout, i.wishes), *outcome.surroundings,
                                            i.thermal, i.circulation, shelf, stop));
      });
  outcome.flow = protected_flow(std::move(outcome.flow), plan.flow, outcome.temperatures.get());
}

}  // namespace underlawn
