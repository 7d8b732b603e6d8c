// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/comparison.h"

#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "cost/discount.h"

namespace underlawn {

namespace {

struct Use {
  double fuel = 0;         // units
  double electricity = 0;  // kWh
};

const YearSum& year_sum(const Simulation& s, int year) {
  return s.years[std::min<std::size_t>(static_cast<std::size_t>(year) - 1, s.years.size() - 1)];
}

double cooling_met(const YearSum& y) {
  return std::max(0.0, y.cooling - y.unmet_cooling);
}

Use loop_use(const YearSum& y) {
  return {0, y.electricity() / kKilowattHour};
}

Use other_use(const YearSum& y, const OtherSystem& o) {
  Use use;
  const double per_unit = o.efficiency * o.heat_content;
  if (per_unit > 0) use.fuel = y.heating / per_unit;
  double joules = o.auxiliary * y.heating;
  if (o.cooling > 0) joules += cooling_met(y) / o.cooling;
  use.electricity = joules / kKilowattHour;
  return use;
}

// What one system is priced by.
struct Rates {
  double fuel = 0, fuel_escalation = 0, fuel_emission = 0;
  double maintenance = 0;
  double bought_again = 0;  // currency, each time
  int life = 0;             // years; 0: never
};

SystemYear year_of(int year, const Use& use, const Rates& rates, const Running& r, int years) {
  SystemYear y;
  y.energy = use.fuel * rates.fuel * std::pow(1 + rates.fuel_escalation, year) +
             use.electricity * r.electricity * std::pow(1 + r.electricity_escalation, year);
  const double inflation = std::pow(1 + r.inflation, year);
  y.maintenance = rates.maintenance * inflation;
  // At the end of the years looked at nothing is bought any more.
  if (rates.life > 0 && year % rates.life == 0 && year < years) y.bought = rates.bought_again * inflation;
  y.emission = use.fuel * rates.fuel_emission + use.electricity * r.electricity_emission;
  return y;
}

template <class UseOf>
SystemCost cost_of(const Simulation& s, std::string name, double first, const Rates& rates, const Running& r,
                   int years, UseOf use_of) {
  SystemCost cost;
  cost.name = std::move(name);
  cost.first = first;
  const Use use = use_of(year_sum(s, 1));
  cost.fuel = use.fuel;
  cost.electricity = use.electricity;
  cost.energy_today = use.fuel * rates.fuel + use.electricity * r.electricity;
  cost.running_today = cost.energy_today + rates.maintenance;
  cost.life_cycle = first;
  cost.paid = {first};
  for (int t = 1; t <= years; ++t) {
    cost.years.push_back(year_of(t, use_of(year_sum(s, t)), rates, r, years));
    const SystemYear& y = cost.years.back();
    cost.life_cycle += y.total() * single_present_value(r.discount, t);
    cost.emission += y.emission;
    cost.paid.push_back(cost.paid.back() + y.total());
  }
  return cost;
}

Against against(const SystemCost& loop, const SystemCost& other, const Running& r, bool priced) {
  Against a;
  a.extra = loop.first - other.first;
  a.saved_first = other.running_today - loop.running_today;
  a.emission_saved = other.emission - loop.emission;
  if (!priced) return a;
  a.simple = simple_payback(a.extra, a.saved_first);
  std::vector<double> savings;
  for (std::size_t i = 0; i < loop.years.size(); ++i)
    savings.push_back(other.years[i].total() - loop.years[i].total());
  a.discounted = payback_years(a.extra, savings, r.discount);
  a.net_savings = other.life_cycle - loop.life_cycle;
  return a;
}

}  // namespace

Comparison compare(const Simulation& s, double net, const Running& r, int design_years, bool priced) {
  Comparison c;
  c.priced = priced;
  c.years = r.years.value_or(design_years);
  if (s.years.empty() || c.years < 1) return c;
  c.heating = s.years.front().heating;
  c.cooling = cooling_met(s.years.front());
  const Rates own{0, 0, 0, r.maintenance, r.unit_cost, r.unit_life};
  c.loop = cost_of(s, say("Ground loop"), net + r.unit_cost, own, r, c.years, loop_use);
  for (const OtherSystem& o : r.others) {
    const Rates rates{o.price, o.escalation, o.emission, o.maintenance, o.first_cost, o.life};
    c.others.push_back(cost_of(s, translated(o.name), o.first_cost, rates, r, c.years,
                               [&](const YearSum& y) { return other_use(y, o); }));
    c.against.push_back(against(c.loop, c.others.back(), r, priced));
  }
  return c;
}

}  // namespace underlawn
