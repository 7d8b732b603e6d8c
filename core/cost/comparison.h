// SPDX-License-Identifier: GPL-3.0-or-later
// What it costs to heat and cool the house, year by year, and when the loop has paid for itself against other
// ways to do the same.
//
// Every system gives the heat that the house needs and takes away the cooling that the loop's heat pump met.
// Amounts of year t fall due at its end; prices of today rise by their escalation from year to year.
// Bought again at the end of its life, what is bought costs what it did, with inflation; the loop itself
// lasts. Nothing is left over at the end.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cost/bill.h"
#include "thermal/simulate.h"

namespace underlawn {

inline constexpr double kKilowattHour = 3.6e6;  // J

struct SystemYear {
  double energy = 0;       // currency, fuel and electricity
  double maintenance = 0;  // currency
  double bought = 0;       // currency, bought again
  double emission = 0;     // kg CO2 equivalent
  double total() const { return energy + maintenance + bought; }
  bool operator==(const SystemYear&) const = default;
};

struct SystemCost {
  std::string name;
  double first = 0;               // currency, incentives taken off
  double fuel = 0;                // units of fuel in the first year; 0 for the loop
  double electricity = 0;         // kWh in the first year
  double energy_today = 0;        // currency a year at today's prices, first year's amounts
  double running_today = 0;       // with maintenance
  std::vector<SystemYear> years;  // 1, 2, ...
  double life_cycle = 0;          // currency today: first + all years, discounted
  double emission = 0;            // kg CO2 equivalent over all years
  std::vector<double> paid;       // currency by the end of year 0, 1, 2, ..., not discounted
  bool operator==(const SystemCost&) const = default;
};

// The loop against one other system.
struct Against {
  double extra = 0;                   // currency, first cost of the loop more than the other's
  double saved_first = 0;             // currency in the first year at today's prices
  std::optional<double> simple;       // years: extra/saved_first
  std::optional<double> discounted;   // years, within those looked at
  std::optional<double> net_savings;  // currency today, over the years: life cycle of the other - of the loop
  double emission_saved = 0;          // kg over the years
  bool operator==(const Against&) const = default;
};

struct Comparison {
  int years = 0;
  bool priced = true;               // the heat pump too, see compare
  double heating = 0, cooling = 0;  // J in the first year: heat given, cooling met
  SystemCost loop;
  std::vector<SystemCost> others;  // as Running::others
  std::vector<Against> against;
  bool operator==(const Comparison&) const = default;
};

// The heat pump has a price: its own, or one among the lines of the offer. Without it the loop's first cost
// and another system's are not of the same things.
inline bool heat_pump_priced(const Pricing& p) {
  return p.running.unit_cost > 0 || !p.terms.extras.empty();
}

// `net`: what the loop costs after incentives. Years beyond those simulated are as the last one. Others that
// do not burn (efficiency or heat content not above 0) cost no fuel. Where the heat pump is not `priced`
// (heat_pump_priced) there are neither paybacks nor net savings.
Comparison compare(const Simulation& simulation, double net, const Running& running, int design_years,
                   bool priced = true);

}  // namespace underlawn
