// SPDX-License-Identifier: GPL-3.0-or-later
// Flows, heads, pump, antifreeze and flushing.
#include <algorithm>

#include "base/say.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

const char* kNetwork =
    mark("Darcy-Weisbach with Churchill 1977; global gradient method, Todini & Pilati 1988");
const char* kMelinder = mark("Melinder 2010, IIR");

void add_wishes(Figures& all, const FlowWishes& w) {
  typed(all, "flow.design_flow", say("Flow while the heat pump runs"), w.design_flow, Q::flow);
  typed(all, "flow.mass_fraction", say("Antifreeze by mass"), w.mass_fraction, Q::ratio);
  typed(all, "flow.design_temperature", say("Fluid over the heating season"), w.design_temperature,
        Q::temperature);
  typed(all, "flow.coldest_temperature", say("Fluid at its coldest"), w.coldest_temperature, Q::temperature);
  typed(all, "flow.freeze_margin", say("Margin to freezing"), w.freeze_margin, Q::temperature_difference);
  typed(all, "flow.capacity", say("Capacity that the pump's power is graded by"), w.capacity, Q::power);
  typed(all, "flow.purge_velocity", say("Velocity for flushing"), w.purge_velocity, Q::velocity);
}

void add_state(Figures& all, const Flow& flow, const FlowState& s, const std::string& key,
               const std::string& when, const std::string& temperature) {
  const std::vector<std::string> from = {"flow.design_flow", "flow.mass_fraction", temperature,
                                         "coil.trench_length"};
  derived(all, key + ".head", say("Head of the loop, {}", when), s.flow.head_loss, Q::head,
          {say("sum of (f L/d + K) v^2/2g along a way"), from, translated(kNetwork)});
  derived(all, key + ".imbalance", say("Imbalance of the circuits, {}", when), s.imbalance, Q::ratio,
          {say("(most - least) / mean flow of circuits"), from, translated(kNetwork)});
  double low = 1e300, high = 0, sum = 0;
  for (int c : flow.loop.circuits) {
    const PipeFlow& p = s.flow.pipes[static_cast<std::size_t>(c)];
    low = std::min(low, std::abs(p.flow));
    high = std::max(high, std::abs(p.flow));
    sum += p.reynolds / static_cast<double>(flow.loop.circuits.size());
  }
  derived(all, key + ".least_circuit", say("Least flow of a circuit, {}", when), low, Q::flow,
          {say("least over the circuits"), from, translated(kNetwork)});
  derived(all, key + ".most_circuit", say("Most flow of a circuit, {}", when), high, Q::flow,
          {say("most over the circuits"), from, translated(kNetwork)});
  derived(all, key + ".reynolds", say("Reynolds number in the coils, mean, {}", when), sum, Q::count,
          {say("v d rho / mu"), from, translated(kMelinder)});
}

void add_pump(Figures& all, const Flow& flow) {
  if (!flow.coldest_pump) return;
  const PumpState& p = *flow.coldest_pump;
  const auto add = [&](const std::string& key, const std::string& label, double value, Q quantity,
                       const std::string& method, std::vector<std::string> from, const std::string& source) {
    derived(all, key, label, value, quantity, {method, std::move(from), source});
  };
  add("flow.pump.flow", say("Flow that the circulator gives at the coldest"), p.duty.flow, Q::flow,
      say("where the circulator's curve meets the loop's"), {"flow.coldest.head", "flow.design_flow"},
      translated(kNetwork));
  add("flow.pump.head", say("Head of the circulator there"), p.duty.head, Q::head,
      say("the circulator's curve at that flow"), {"flow.pump.flow"}, "");
  add("flow.pump.power", say("Power of the circulator there"), p.duty.power, Q::power,
      say("the circulator's curve at that flow"), {"flow.pump.flow"}, "");
  derived(all, "flow.pump.share", say("Pump power by capacity, graded {}", p.grade), p.w_per_kw / 1000,
          Q::ratio,
          {say("power / capacity; 5, 7.5, 10 and 15 hp per 100 tons divide the grades"),
           {"flow.pump.power", "flow.capacity"},
           say("Kavanaugh & Rafferty 2014, ASHRAE, as quoted: 5 and 7.5; 10 and 15 from memory")});
}

void add_filling(Figures& all, const Flow& flow) {
  const Antifreeze& a = flow.antifreeze;
  derived(all, "flow.volume", say("Liquid in the loop"), flow.volume, Q::fluid_volume,
          {say("pi/4 bore^2 x length over all pipes"), {"coil.trench_length"}, ""});
  derived(
      all, "flow.volume_fraction", say("Antifreeze by volume"), a.volume_fraction, Q::ratio,
      {"(x/rho_a) / (x/rho_a + (1 - x)/rho_w)", {"flow.mass_fraction"}, say("CRC Handbook (from memory)")});
  derived(all, "flow.concentrate", say("Concentrate to buy"), a.concentrate, Q::fluid_volume,
          {say("mass fraction x density of the solution x volume / density of the concentrate"),
           {"flow.mass_fraction", "flow.volume"},
           translated(kMelinder)});
  derived(all, "flow.freezing_point", say("Freezing point"), a.freezing_point, Q::temperature,
          {say("by concentration"), {"flow.mass_fraction"}, translated(kMelinder)});
  derived(all, "flow.wanted_freezing", say("Highest freezing point that will do"), a.wanted_freezing,
          Q::temperature,
          {say("the coldest fluid, typed or simulated, less the margin; at most 0 °C"),
           {"flow.coldest_temperature", "flow.freeze_margin"},
           ""});
  if (a.recommended)
    derived(all, "flow.recommended_fraction", say("Antifreeze needed, by mass"), *a.recommended, Q::ratio,
            {say("least that freezes below the coldest fluid, typed or simulated, less the margin"),
             {"flow.coldest_temperature", "flow.freeze_margin"},
             translated(kMelinder)});
}

void add_purge(Figures& all, const PurgeRun& p) {
  derived(all, "flow.purge.flow", say("Flow for flushing all circuits"), p.flow, Q::flow,
          {say("least that gives the velocity in every pipe"),
           {"flow.purge_velocity"},
           say("2 ft/s: UFGS 15741N; ENERGY STAR Homes Northwest")});
  derived(all, "flow.purge.head", say("Head for that, without the heat pump"), p.head, Q::head,
          {say("head of the loop at that flow, water"), {"flow.purge.flow"}, translated(kNetwork)});
  derived(all, "flow.purge.time", say("Time of flushing"), p.time, Q::duration,
          {say("the slowest circuit's liquid several times, at least 15 min"),
           {"flow.purge.flow", "flow.volume"},
           "UFGS 15741N"});
}

}  // namespace

void add_flow(Figures& all, const Plan& plan, const Outcome& outcome) {
  const Flow& flow = *outcome.flow;
  add_wishes(all, plan.flow);
  add_state(all, flow, flow.design, "flow.design", say("heating season"), "flow.design_temperature");
  add_state(all, flow, flow.coldest, "flow.coldest", say("at the coldest"), "flow.coldest_temperature");
  add_pump(all, flow);
  add_filling(all, flow);
  if (outcome.purge != nullptr) add_purge(all, outcome.purge->together);
}

}  // namespace underlawn::figures
