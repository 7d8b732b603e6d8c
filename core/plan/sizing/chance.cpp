// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/sizing/chance.h"

#include <algorithm>

#include "base/say.h"
#include "plan/sizing/normal_draws.h"
#include "thermal/loop_geometry.h"

namespace underlawn {

namespace {

// All four numbers are drawn whatever their spread, so that one spread does not shift the others' draws.
Surroundings drawn(Surroundings s, const Spreads& spreads, NormalDraws& normal) {
  s.soil.conductivity *= std::exp(spreads.conductivity * normal());
  s.soil.heat_capacity *= std::exp(spreads.heat_capacity * normal());
  const double load = std::exp(spreads.load * normal());
  for (auto* hours : {&s.house.heating, &s.house.cooling, &s.ground_hours})
    for (double& w : *hours) w *= load;
  s.climate.mean += spreads.mean_temperature * normal();
  return s;
}

Quantiles quantiles(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const auto at = [&](double share) {
    const double place = share * static_cast<double>(values.size() - 1);
    const auto i = static_cast<std::size_t>(place);
    const double next = values[std::min(i + 1, values.size() - 1)];
    return values[i] + (place - static_cast<double>(i)) * (next - values[i]);
  };
  return {at(0.05), at(0.5), at(0.95)};
}

std::optional<Trouble> what_is_wrong(const Outcome& outcome, const ChanceWishes& w) {
  if (outcome.temperatures == nullptr || outcome.surroundings == nullptr)
    return Trouble{"chance_no_temperatures", say("The loop"), say("without temperatures"),
                   say("laid, and its soil and load sound"), say("Draw the loop first.")};
  if (w.draws < 1 || w.draws > 100'000)
    return Trouble{"chance_draws", say("Number of draws"), std::to_string(w.draws), say("from 1 to 100000"),
                   say("A few hundred tell the chance to a few percent.")};
  const Spreads& s = w.spreads;
  for (double v : {s.conductivity, s.heat_capacity, s.load, s.mean_temperature})
    if (!(v >= 0 && v <= 5))
      return Trouble{"chance_spread", say("A spread"), std::to_string(v), say("from 0 to 5"),
                     say("Enter a standard deviation.")};
  return std::nullopt;
}

}  // namespace

ShareInterval wilson(int successes, int trials) {
  constexpr double z = 1.959963984540054;
  const double n = trials, p = successes / n;
  const double middle = (p + z * z / (2 * n)) / (1 + z * z / n);
  const double half = z / (1 + z * z / n) * std::sqrt(p * (1 - p) / n + z * z / (4 * n * n));
  return {std::max(0.0, middle - half), std::min(1.0, middle + half)};
}

Result<Chance> chance_of_holding(const Plan& plan, const Outcome& outcome, const ChanceWishes& wishes,
                                 const std::function<void(double)>& progress, std::stop_token stop) {
  if (const auto wrong = what_is_wrong(outcome, wishes)) return refuse(*wrong);
  const Surroundings& base = *outcome.surroundings;
  const PipesInGround pipes = pipes_in_ground(outcome.layout, plan.wishes);
  KernelShelf shelf;
  const StepResponse response =
      step_response_of(pipes, base.soil.conductivity * plan.thermal.surface_resistance, shelf);
  NormalDraws normal(wishes.seed);
  Chance out;
  std::vector<double> coldest, warmest;
  for (; out.draws < wishes.draws; ++out.draws) {
    if (progress) progress(static_cast<double>(out.draws) / wishes.draws);
    const Simulation s = solve_temperatures(pipes, response, drawn(base, wishes.spreads, normal),
                                            plan.thermal, outcome.temperatures->circulation, stop)
                             .simulation;
    if (stop.stop_requested())
      return refuse({"chance_stopped", say("The chance"), say_as("of work", "stopped"), say("run to its end"),
                     say("Start it again.")});
    const bool cold = s.coldest<plan.thermal.coldest_allowed, warm = s.warmest> plan.thermal.warmest_allowed;
    out.too_cold += cold;
    out.too_warm += warm;
    out.holding += !cold && !warm;
    coldest.push_back(s.coldest);
    warmest.push_back(s.warmest);
  }
  out.share = static_cast<double>(out.holding) / out.draws;
  const ShareInterval interval = wilson(out.holding, out.draws);
  out.low = interval.low;
  out.high = interval.high;
  out.coldest = quantiles(std::move(coldest));
  out.warmest = quantiles(std::move(warmest));
  return out;
}

}  // namespace underlawn
