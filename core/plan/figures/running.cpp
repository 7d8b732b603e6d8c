// SPDX-License-Identifier: GPL-3.0-or-later
// Running cost, emissions and payback.
#include <algorithm>

#include "base/say.h"
#include "cost/comparison.h"
#include "cost/discount.h"
#include "cost/fuels.h"
#include "plan/figures/price_groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;
using Keys = std::vector<std::string>;

void add_inputs(Figures& all, const Running& r, int years) {
  typed(all, "run.electricity_price", say("Price of electricity, a kWh"), r.electricity, Q::money);
  typed(all, "run.electricity_escalation", say("Rise of the price of electricity, a year"),
        r.electricity_escalation, Q::ratio);
  typed(all, "run.electricity_emission", say("Emission of electricity, CO2 a kWh"), r.electricity_emission,
        Q::mass);
  typed(all, "run.discount", say("Discount rate, a year"), r.discount, Q::ratio);
  typed(all, "run.inflation", say("Inflation of maintenance and what is bought again, a year"), r.inflation,
        Q::ratio);
  typed(all, "run.years", say("Years looked at"), years, Q::count);
  typed(all, "run.loop.unit_cost", say("Heat pump indoors"), r.unit_cost, Q::money);
  typed(all, "run.loop.maintenance", say("Maintenance of the ground loop system, a year"), r.maintenance,
        Q::money);
  typed(all, "run.loop.unit_life", say("Years until the heat pump is bought again"), r.unit_life, Q::count);
}

// Of every simulated year, the last one again where more are looked at: it grows while the ground cools.
double electricity_over(const Simulation& s, int years) {
  double sum = 0;
  for (int t = 0; t < years; ++t)
    sum += s.years[std::min(static_cast<std::size_t>(t), s.years.size() - 1)].electricity();
  return sum;
}

double worth_of_energy(const SystemCost& cost, double discount) {
  double sum = 0;
  for (std::size_t i = 0; i < cost.years.size(); ++i)
    sum += cost.years[i].energy * single_present_value(discount, static_cast<int>(i) + 1);
  return sum;
}

// The loop's electricity is another in every year.
void add_energy_over_years(Figures& all, const Comparison& c, const Running& r, const Simulation& s,
                           const std::string& currency) {
  derived(all, "run.loop.energy_years", say("Electricity of the ground loop system over the years"),
          electricity_over(s, c.years), Q::energy,
          {say("sum over the years, each as simulated"),
           {"run.loop.energy", "heat.electricity", "run.years"},
           say("hourly simulation")});
  derived(all, "run.loop.energy_worth", say("Electricity of all years, in today's {}", currency),
          worth_of_energy(c.loop, r.discount), Q::money,
          {say("sum over years t of that year's kWh x price x (1 + rise)^t/(1 + discount)^t"),
           {"run.loop.energy_years", "run.electricity_price", "run.electricity_escalation", "run.discount"},
           translated(kDiscountSource)});
}

void add_needs(Figures& all, const Comparison& c) {
  derived(all, "run.heating", say("Heat given in the first year"), c.heating, Q::energy,
          {say("sum over the hours"), {"heat.electricity"}, say("hourly simulation")});
  derived(all, "run.cooling", say("Cooling met in the first year"), c.cooling, Q::energy,
          {say("sum over the hours"), {"heat.electricity"}, say("hourly simulation")});
  derived(all, "run.loop.energy", say("Electricity of the ground loop system, first year"),
          c.loop.electricity * kKilowattHour, Q::energy,
          {say("heat pump, circulator and back-up heat, sum over the hours"),
           {"heat.electricity"},
           say("hourly simulation")});
}

// What a system's costs and emissions are worked out from.
struct SystemInputs {
  Keys first, energy;    // what is bought at first; amounts and prices of a year
  Keys later;            // rises of prices, and when what is bought again
  Keys emission;         // amounts and emissions of a unit
  bool by_year = false;  // the energy is another in every year: its worth is a figure of its own
};

// Of a system: first and running cost, life-cycle cost, emissions.
void add_system(Figures& all, const std::string& key, const SystemCost& s, const SystemInputs& in,
                const std::string& currency) {
  Keys life_cycle = {key + ".first", in.by_year ? key + ".energy_worth" : key + ".running", "run.discount",
                     "run.inflation", "run.years"};
  life_cycle.insert(life_cycle.end(), in.later.begin(), in.later.end());
  Keys emission = in.emission;
  emission.emplace_back("run.years");
  derived(all, key + ".first", say("{}: first cost, {}", s.name, currency), s.first, Q::money,
          {in.first.size() > 1 ? say("price less incentives + heat pump indoors") : say("as entered"),
           in.first, ""});
  derived(all, key + ".energy_cost", say("{}: energy a year at today's prices, {}", s.name, currency),
          s.energy_today, Q::money, {say("units of fuel x price + kWh x price"), in.energy, ""});
  derived(all, key + ".running", say("{}: energy and maintenance a year, {}", s.name, currency),
          s.running_today, Q::money,
          {say("energy + maintenance"), {key + ".energy_cost", key + ".maintenance"}, ""});
  derived(all, key + ".life_cycle", say("{}: life-cycle cost, {}", s.name, currency), s.life_cycle, Q::money,
          {in.by_year ? say("first cost + energy of all years + sum over years t of maintenance and what is "
                            "bought again, x (1 + inflation)^t/(1 + discount)^t")
                      : say("first cost + sum over years t of what is paid in year t/(1 + discount)^t"),
           std::move(life_cycle), translated(kDiscountSource)});
  derived(all, key + ".emission", say("{}: emission over the years", s.name), s.emission, Q::mass,
          {say("sum over years of fuel and electricity x emission a unit"), std::move(emission), ""});
}

void add_other_inputs(Figures& all, const std::string& key, const OtherSystem& o) {
  const std::string of = translated(o.name), fuel = translated(o.fuel);
  typed(all, key + ".fuel_price", say("{}: price of {}, a {}", of, fuel, o.unit), o.price, Q::money);
  typed(all, key + ".fuel_escalation", say("{}: rise of it, a year", of), o.escalation, Q::ratio);
  all.add({key + ".heat_content",
           say("{}: heat content of a {}", of, o.unit),
           o.heat_content,
           Q::energy,
           kTyped,
           say("the usual ones: {}", translated(kHeatContentSource)),
           {}});
  all.add({key + ".fuel_emission",
           say("{}: CO2 a {}", of, o.unit),
           o.emission,
           Q::mass,
           kTyped,
           say("the usual ones: {}", translated(kEmissionSource)),
           {}});
  typed(all, key + ".efficiency", say("{}: heat given over heat content", of), o.efficiency, Q::count);
  typed(all, key + ".cooling_efficiency", say("{}: cooling over electricity", of), o.cooling, Q::count);
  typed(all, key + ".auxiliary", say("{}: electricity for fans over heat given", of), o.auxiliary, Q::ratio);
  typed(all, key + ".maintenance", say("{}: maintenance a year", of), o.maintenance, Q::money);
  typed(all, key + ".first_typed", say("{}: first cost", of), o.first_cost, Q::money);
  typed(all, key + ".life", say("{}: years until it is bought again", of), o.life, Q::count);
}

void add_uses(Figures& all, const std::string& key, const OtherSystem& o, const SystemCost& cost) {
  const std::string name = translated(o.name);
  derived(all, key + ".fuel", say("{}: {} of {} in the first year", name, o.unit, translated(o.fuel)),
          cost.fuel, Q::count,
          {say("heat/(efficiency x heat content)"),
           {"run.heating", key + ".efficiency", key + ".heat_content"},
           ""});
  derived(all, key + ".electricity", say("{}: other electricity in the first year", name),
          cost.electricity * kKilowattHour, Q::energy,
          {say("cooling/its efficiency + fans x heat"),
           {"run.cooling", key + ".cooling_efficiency", key + ".auxiliary", "run.heating"},
           ""});
}

void add_against(Figures& all, const std::string& key, const std::string& name, const Against& a,
                 const std::string& currency) {
  if (a.net_savings)
    derived(all, key + ".extra", say("Against {}: paid more at first, {}", name, currency), a.extra, Q::money,
            {say("first cost - its first cost"), {"run.loop.first", key + ".first"}, ""});
  derived(all, key + ".saved", say("Against {}: saved a year at today's prices, {}", name, currency),
          a.saved_first, Q::money,
          {say("its energy and maintenance - ours"), {key + ".running", "run.loop.running"}, ""});
  if (a.simple)
    derived(all, key + ".payback", say("Against {}: simple payback, years", name), *a.simple, Q::count,
            {say("paid more at first/saved a year"),
             {key + ".extra", key + ".saved"},
             translated(kDiscountSource)});
  if (a.discounted)
    derived(all, key + ".discounted_payback", say("Against {}: discounted payback, years", name),
            *a.discounted, Q::count,
            {say("the last year in which savings, each over (1 + discount)^t, come to what was paid more for "
                 "good "
                 "(something bought later may undo an earlier one); within it in proportion"),
             {key + ".extra", key + ".saved", key + ".fuel_escalation", "run.electricity_escalation",
              "run.discount", "run.years"},
             translated(kDiscountSource)});
  if (a.net_savings)
    derived(all, key + ".net_savings", say("Against {}: saved over the years, in today's {}", name, currency),
            *a.net_savings, Q::money,
            {say("its life-cycle cost - ours"),
             {key + ".life_cycle", "run.loop.life_cycle"},
             translated(kDiscountSource)});
  derived(all, key + ".emission_saved", say("Against {}: emission spared over the years", name),
          a.emission_saved, Q::mass,
          {say("its emission - ours"), {key + ".emission", "run.loop.emission"}, ""});
}

}  // namespace

void add_running(Figures& all, const Plan& plan, const Outcome& outcome) {
  const Comparison& c = *outcome.comparison;
  const Running& r = plan.pricing.running;
  const std::string& currency = plan.wishes.prices.currency;
  if (c.years < 1 || all.find("cost.net") == nullptr) return;
  add_inputs(all, r, c.years);
  add_needs(all, c);
  add_energy_over_years(all, c, r, outcome.temperatures->simulation, currency);
  add_system(all, "run.loop", c.loop,
             {{"cost.net", "run.loop.unit_cost"},
              {"run.loop.energy", "run.electricity_price"},
              {"run.loop.maintenance", "run.loop.unit_life", "run.loop.unit_cost"},
              {"run.loop.energy_years", "run.electricity_emission"},
              true},
             currency);
  for (std::size_t i = 0; i < c.others.size(); ++i) {
    const std::string key = "run.other_" + std::to_string(i + 1);
    add_other_inputs(all, key, r.others[i]);
    add_uses(all, key, r.others[i], c.others[i]);
    add_system(all, key, c.others[i],
               {{key + ".first_typed"},
                {key + ".fuel", key + ".fuel_price", key + ".electricity", "run.electricity_price"},
                {key + ".fuel_escalation", "run.electricity_escalation", key + ".life"},
                {key + ".fuel", key + ".fuel_emission", key + ".electricity", "run.electricity_emission"}},
               currency);
    add_against(all, key, c.others[i].name, c.against[i], currency);
  }
}

}  // namespace underlawn::figures
