// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/coldest_fluid.h"

#include <algorithm>

namespace underlawn {

std::optional<double> coldest_simulated(const Temperatures* temperatures) {
  if (temperatures == nullptr || temperatures->simulation.years.empty()) return std::nullopt;
  const Simulation& s = temperatures->simulation;
  double coldest = 1e9;
  for (const auto* year : {&s.first, &s.tenth, &s.last})
    for (const HourState& h : *year) coldest = std::min(coldest, h.leaving);
  return coldest < 1e8 ? std::optional(coldest) : std::nullopt;
}

double coldest_fluid(const FlowWishes& wishes, const Temperatures* temperatures) {
  return std::min(wishes.coldest_temperature,
                  coldest_simulated(temperatures).value_or(wishes.coldest_temperature));
}

std::shared_ptr<const Flow> protected_flow(std::shared_ptr<const Flow> flow, const FlowWishes& wishes,
                                           const Temperatures* temperatures) {
  FlowWishes colder = wishes;
  colder.coldest_temperature = coldest_fluid(wishes, temperatures);
  if (flow == nullptr || colder.coldest_temperature >= wishes.coldest_temperature) return flow;
  auto antifreeze = antifreeze_for(colder, flow->antifreeze.volume);
  if (!antifreeze) return flow;
  Flow made = *flow;
  made.antifreeze = std::move(*antifreeze);
  return std::make_shared<const Flow>(std::move(made));
}

}  // namespace underlawn
