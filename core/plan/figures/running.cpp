// SPDX-License-Identifier: GPL-3.0-or-later
// Running cost, emissions and payback.
#include "cost/comparison.h"
#include "cost/discount.h"
#include "cost/fuels.h"
#include "plan/figures/price_groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;
using Keys = std::vector<std::string>;

void add_inputs(Figures& all, const Running& r, int years) {
  typed(all, "run.electricity_price", "Price of electricity, a kWh", r.electricity, Q::money);
  typed(all, "run.electricity_escalation", "Rise of the price of electricity, a year",
        r.electricity_escalation, Q::ratio);
  typed(all, "run.electricity_emission", "Emission of electricity, kg of CO2 a kWh", r.electricity_emission,
        Q::mass);
  typed(all, "run.discount", "Discount rate, a year", r.discount, Q::ratio);
  typed(all, "run.inflation", "Inflation of maintenance and what is bought again, a year", r.inflation,
        Q::ratio);
  typed(all, "run.years", "Years looked at", years, Q::count);
  typed(all, "run.loop.unit_cost", "Heat pump indoors", r.unit_cost, Q::money);
  typed(all, "run.loop.maintenance", "Maintenance of the ground loop system, a year", r.maintenance,
        Q::money);
  typed(all, "run.loop.unit_life", "Years until the heat pump is bought again", r.unit_life, Q::count);
}

void add_needs(Figures& all, const Comparison& c) {
  derived(all, "run.heating", "Heat given in the first year", c.heating, Q::energy,
          {"sum over the hours", {"heat.electricity"}, "hourly simulation"});
  derived(all, "run.cooling", "Cooling met in the first year", c.cooling, Q::energy,
          {"sum over the hours", {"heat.electricity"}, "hourly simulation"});
  derived(all, "run.loop.energy", "Electricity of the ground loop system, first year",
          c.loop.electricity * kKilowattHour, Q::energy,
          {"heat pump, circulator and back-up heat, sum over the hours",
           {"heat.electricity"},
           "hourly simulation"});
}

// Of a system: first and running cost, life-cycle cost, emissions.
void add_system(Figures& all, const std::string& key, const SystemCost& s, const Keys& first,
                const Keys& energy, const std::string& currency) {
  derived(all, key + ".first", s.name + ": first cost, " + currency, s.first, Q::money,
          {first.size() > 1 ? "price less incentives + heat pump indoors" : "typed", first, ""});
  derived(all, key + ".energy_cost", s.name + ": energy a year at today's prices, " + currency,
          s.energy_today, Q::money, {"units of fuel x price + kWh x price", energy, ""});
  derived(all, key + ".running", s.name + ": energy and maintenance a year, " + currency, s.running_today,
          Q::money, {"energy + maintenance", {key + ".energy_cost", key + ".maintenance"}, ""});
  derived(all, key + ".life_cycle", s.name + ": life-cycle cost, " + currency, s.life_cycle, Q::money,
          {"first cost + sum over years t of what is paid in year t/(1 + discount)^t",
           {key + ".first", key + ".running", "run.discount", "run.inflation", "run.years"},
           kDiscountSource});
  derived(all, key + ".emission", s.name + ": emission over the years", s.emission, Q::mass,
          {"sum over years of fuel and electricity x kg a unit", {key + ".energy_cost", "run.years"}, ""});
}

void add_other_inputs(Figures& all, const std::string& key, const OtherSystem& o) {
  const std::string of = o.name + ": ";
  typed(all, key + ".fuel_price", of + "price of " + o.fuel + ", a " + o.unit, o.price, Q::money);
  typed(all, key + ".fuel_escalation", of + "rise of it, a year", o.escalation, Q::ratio);
  all.add({key + ".heat_content",
           of + "heat content of a " + o.unit,
           o.heat_content,
           Q::energy,
           kTyped,
           "the usual ones: " + std::string(kHeatContentSource),
           {}});
  all.add({key + ".fuel_emission",
           of + "kg of CO2 a " + o.unit,
           o.emission,
           Q::mass,
           kTyped,
           "the usual ones: " + std::string(kEmissionSource),
           {}});
  typed(all, key + ".efficiency", of + "heat given over heat content", o.efficiency, Q::count);
  typed(all, key + ".cooling_efficiency", of + "cooling over electricity", o.cooling, Q::count);
  typed(all, key + ".auxiliary", of + "electricity for fans over heat given", o.auxiliary, Q::ratio);
  typed(all, key + ".maintenance", of + "maintenance a year", o.maintenance, Q::money);
  typed(all, key + ".first_typed", of + "first cost", o.first_cost, Q::money);
  typed(all, key + ".life", of + "years until it is bought again", o.life, Q::count);
}

void add_uses(Figures& all, const std::string& key, const OtherSystem& o, const SystemCost& cost) {
  derived(
      all, key + ".fuel", o.name + ": " + o.unit + " of " + o.fuel + " in the first year", cost.fuel,
      Q::count,
      {"heat/(efficiency x heat content)", {"run.heating", key + ".efficiency", key + ".heat_content"}, ""});
  derived(all, key + ".electricity", o.name + ": other electricity in the first year",
          cost.electricity * kKilowattHour, Q::energy,
          {"cooling/its efficiency + fans x heat",
           {"run.cooling", key + ".cooling_efficiency", key + ".auxiliary", "run.heating"},
           ""});
}

void add_against(Figures& all, const std::string& key, const std::string& name, const Against& a,
                 const std::string& currency) {
  const std::string against = "Against " + name + ": ";
  derived(all, key + ".extra", against + "paid more at first, " + currency, a.extra, Q::money,
          {"first cost - its first cost", {"run.loop.first", key + ".first"}, ""});
  derived(all, key + ".saved", against + "saved a year at today's prices, " + currency, a.saved_first,
          Q::money, {"its energy and maintenance - ours", {key + ".running", "run.loop.running"}, ""});
  if (a.simple)
    derived(all, key + ".payback", against + "simple payback, years", *a.simple, Q::count,
            {"paid more at first/saved a year", {key + ".extra", key + ".saved"}, kDiscountSource});
  if (a.discounted)
    derived(all, key + ".discounted_payback", against + "discounted payback, years", *a.discounted, Q::count,
            {"the year in which savings, each over (1 + discount)^t, have come to what was paid more; within "
             "it in "
             "proportion",
             {key + ".extra", key + ".saved", key + ".fuel_escalation", "run.electricity_escalation",
              "run.discount", "run.years"},
             kDiscountSource});
  derived(all, key + ".net_savings", against + "saved over the years, in today's " + currency, a.net_savings,
          Q::money,
          {"its life-cycle cost - ours", {key + ".life_cycle", "run.loop.life_cycle"}, kDiscountSource});
  derived(all, key + ".emission_saved", against + "emission spared over the years", a.emission_saved, Q::mass,
          {"its emission - ours", {key + ".emission", "run.loop.emission"}, ""});
}

}  // namespace

void add_running(Figures& all, const Plan& plan, const Outcome& outcome) {
  const Comparison& c = *outcome.comparison;
  const Running& r = plan.pricing.running;
  const std::string& currency = plan.wishes.prices.currency;
  if (c.years < 1 || all.find("cost.net") == nullptr) return;
  add_inputs(all, r, c.years);
  add_needs(all, c);
  add_system(all, "run.loop", c.loop, {"cost.net", "run.loop.unit_cost"},
             {"run.loop.energy", "run.electricity_price"}, currency);
  for (std::size_t i = 0; i < c.others.size(); ++i) {
    const std::string key = "run.other_" + std::to_string(i + 1);
    add_other_inputs(all, key, r.others[i]);
    add_uses(all, key, r.others[i], c.others[i]);
    add_system(all, key, c.others[i], {key + ".first_typed"},
               {key + ".fuel", key + ".fuel_price", key + ".electricity", "run.electricity_price"}, currency);
    add_against(all, key, r.others[i].name, c.against[i], currency);
  }
}

}  // namespace underlawn::figures
