// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/built_holds.h"

#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "plan/coldest_fluid.h"

namespace underlawn {

namespace {

constexpr double kSame = 1e-6;

class Holds {
 public:
  void add(const std::string& key, const std::string& what, Quantity quantity,
           const std::optional<double>& planned, const std::optional<double>& built, double limit,
           double old_limit, bool at_least) {
    if (!planned || !built || !std::isfinite(limit)) return;
    const auto ok = [&](double value, double bound) {
      return at_least ? value >= bound - kSame : value <= bound + kSame;
    };
    all_.push_back(
        {key, what, quantity, *planned, *built, limit, at_least, ok(*planned, old_limit), ok(*built, limit)});
  }
  std::vector<Hold> take() { return std::move(all_); }

 private:
  std::vector<Hold> all_;
};

double freezing_limit(const Plan& plan, const LoopDoes& loop) {
  const double coldest =
      std::min(plan.flow.coldest_temperature, loop.coldest_fluid.value_or(plan.flow.coldest_temperature));
  return std::min(0.0, coldest - plan.flow.freeze_margin);
}

}  // namespace

LoopDoes does(const Flow* flow, const Purge* purge, const Temperatures* temperatures) {
  LoopDoes d;
  if (temperatures != nullptr && !temperatures->simulation.years.empty()) {
    const Simulation& s = temperatures->simulation;
    if (s.coldest < 1e8) d.coldest = s.coldest;
    if (s.warmest > -1e8) d.warmest = s.warmest;
    d.coldest_fluid = coldest_simulated(temperatures);
  }
  if (flow != nullptr) {
    d.freezing = flow->antifreeze.freezing_point;
    d.imbalance = flow->design.imbalance;
    if (flow->coldest_pump) d.pump = flow->coldest_pump->duty.flow;
  }
  if (purge != nullptr && purge->together.cart) {
    d.flush = purge->together.cart->flow;
    d.flush_asked = purge->together.flow;
  }
  return d;
}

std::vector<Hold> holds_of(const Plan& plan, const LoopDoes& planned, const LoopDoes& built) {
  Holds all;
  const ThermalWishes& t = plan.thermal;
  const FlowWishes& f = plan.flow;
  all.add("coldest", say("Coldest water to the heat pump"), Quantity::temperature, planned.coldest,
          built.coldest, t.coldest_allowed, t.coldest_allowed, true);
  all.add("warmest", say("Warmest water to the heat pump"), Quantity::temperature, planned.warmest,
          built.warmest, t.warmest_allowed, t.warmest_allowed, false);
  // What was measured goes before what was planned.
  const bool read = plan.record.fill.freezing_point && f.fluid != Fluid::water && built.freezing;
  all.add("freezing", read ? say("Freezing point as read at the fill") : say("Freezing point of the fluid"),
          Quantity::temperature, planned.freezing, read ? plan.record.fill.freezing_point : built.freezing,
          freezing_limit(plan, built), freezing_limit(plan, planned), false);
  all.add("balance", say("Imbalance of the circuits"), Quantity::ratio, planned.imbalance, built.imbalance,
          f.most_imbalance, f.most_imbalance, false);
  // A hundredth less is within what a pump curve tells.
  all.add("circulator", say("Flow of the circulator at the coldest"), Quantity::flow, planned.pump,
          built.pump, 0.99 * f.design_flow, 0.99 * f.design_flow, true);
  all.add("flushing", say("Flow of the flush cart"), Quantity::flow, planned.flush, built.flush,
          built.flush_asked.value_or(NAN), planned.flush_asked.value_or(NAN), true);
  return all.take();
}

std::vector<Hold> holds_of(const Plan& plan, const Outcome& planned, const Outcome& built) {
  return holds_of(plan, does(planned.flow.get(), planned.purge.get(), planned.temperatures.get()),
                  does(built.flow.get(), built.purge.get(), built.temperatures.get()));
}

bool worse_than_planned(const std::vector<Hold>& holds) {
  return std::any_of(holds.begin(), holds.end(), [](const Hold& h) {
    const double less = h.at_least ? h.planned - h.built : h.built - h.planned;
    return !h.holds && (h.held || less > 0.01 * std::abs(h.planned));
  });
}

bool anything_built(const Plan& plan) {
  return plan.as_built != AsBuilt{} || (plan.record.fill.freezing_point && plan.flow.fluid != Fluid::water);
}

bool all_hold(const std::vector<Hold>& holds) {
  return std::all_of(holds.begin(), holds.end(), [](const Hold& h) { return h.holds; });
}

}  // namespace underlawn
