// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/sizing/smallest_field.h"

#include <algorithm>

#include "base/say.h"
#include "pipe/pipe_size.h"

namespace underlawn {

namespace {

constexpr double kFinest = 0.5;  // m of pipe

// Does the field of n circuits, all on the lot, hold?
bool lies_and_holds(FieldTrials& trials, int n, const ThermalWishes& limits) {
  const FieldSize& f = trials.placed(n);
  return f.circuits == n && holds(f, limits);
}

// The plan's coil with this much pipe in the same trench.
Result<Coil> with_pipe(const Plan& plan, const Coil& drawn, double length) {
  Wishes w = plan.wishes;
  w.unknown = CoilUnknown::pitch;
  w.trench_length = drawn.trench_length;
  w.coil_length = length;
  return coil_of(w, plan.units);
}

Trouble straight_refusal() {
  return {"least_coil_straight", say("The coil length"), say("bound to the trench length"),
          say("a pattern with loops, where pipe can be added in the same trench"),
          say("Change the number of circuits or the trench length.")};
}

Trouble not_enough(const Plan& plan, double most) {
  return {"least_coil_too_little", say("The most pipe tried in these trenches"),
          say("{} a coil", print_quantity(Quantity::length, most, plan.units)),
          say("enough to hold the limits"), say("Add circuits or dig deeper.")};
}

// Ends of what can be laid in the same trench, within a third and three times what is drawn.
struct Range {
  double low, high;
};
Range layable(const Plan& plan, const Coil& drawn) {
  Range r{drawn.coil_length, drawn.coil_length};
  const auto edge = [&](double inside, double outside) {
    if (with_pipe(plan, drawn, outside)) return outside;
    for (int i = 0; i < 12; ++i) {
      const double middle = (inside + outside) / 2;
      (with_pipe(plan, drawn, middle) ? inside : outside) = middle;
    }
    return inside;
  };
  return {edge(r.low, drawn.coil_length / 3), edge(r.high, drawn.coil_length * 3)};
}

}  // namespace

Result<Coil> coil_of(const Wishes& w, UnitSystem units) {
  const auto pipe = find_pipe(w.pipe);
  return solve_coil({w.unknown, w.loop_diameter, w.pitch, w.coil_length, w.trench_length,
                     pipe ? pipe->outside_diameter : CoilRequest{}.pipe_diameter, units, w.pattern,
                     w.level_distance, w.side_distance, w.return_on_top});
}

SmallestField smallest_field(FieldTrials& trials, const ThermalWishes& limits, const std::stop_token& stop) {
  const int open = trials.smallest_idealised();
  const int start = open > 0 ? open : kMostCircuitsTried;
  int n = std::min(start, std::max(1, trials.placed(start).circuits));
  while (n < kMostCircuitsTried && !lies_and_holds(trials, n, limits) && trials.placed(n).circuits == n &&
         !stop.stop_requested())
    ++n;
  if (!lies_and_holds(trials, n, limits)) {
    SmallestField out;
    if (open > 0) out.size = trials.idealised(open);
    if (trials.placed(n).circuits > 0) out.given = trials.placed(n);
    return out;
  }
  while (n > 1 && lies_and_holds(trials, n - 1, limits) && !stop.stop_requested()) --n;
  return {trials.placed(n), std::nullopt};
}

Result<double> least_coil_length(FieldTrials& trials, const Plan& plan, const Coil& drawn,
                                 const std::stop_token& stop) {
  if (is_straight(plan.wishes.pattern)) return refuse(straight_refusal());
  const auto enough = [&](double length) {
    const auto coil = with_pipe(plan, drawn, length);
    return coil && holds(trials.with_coil(plan.wishes.circuits, *coil), plan.thermal);
  };
  auto [low, high] = layable(plan, drawn);
  if (!enough(high)) return refuse(not_enough(plan, high));
  if (enough(low)) return low;
  while (high - low > kFinest && !stop.stop_requested()) {
    const double middle = (low + high) / 2;
    (enough(middle) ? high : low) = middle;
  }
  return high;
}

}  // namespace underlawn
