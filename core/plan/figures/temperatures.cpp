// SPDX-License-Identifier: GPL-3.0-or-later
// The temperatures of the loop and what the heat pump makes of them.
#include <algorithm>

#include "base/say.h"
#include "house/calendar.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

const char* kGround = mark("Kusuda & Achenbach 1965, ASHRAE Trans. 71(1)");
const char* kSource = mark("continuous point source, Carslaw & Jaeger 10.2, along the real path of the pipe");

std::vector<std::string> response_from() {
  return {"heat.pipe", "heat.depth", "soil.conductivity", "soil.diffusivity", "soil.surface_resistance"};
}

void add_loop(Figures& all, const Temperatures& t) {
  derived(all, "heat.pipe", say("Pipe that exchanges heat"), t.pipe, Q::length,
          {say("coils + 2 x (header + run)"), {"layout.circuits_placed", "coil.trench_length"}, ""});
  derived(all, "heat.depth", say("Depth of the pipe, mean"), t.depth, Q::length,
          {say("mean over the pipe of the depth of its axis"), {"dig.trench_depth", "dig.run_depth"}, ""});
  derived(all, "heat.fluid_resistance", say("Resistance of pipe wall and film"),
          t.circulation.fluid_resistance, Q::resistance,
          {say("ln(do/di)/(2 pi k) + 1/(pi di h), mean over the pipe"),
           {"heat.pipe"},
           say("Gnielinski 1976, 2013")});
  const auto response = [&](const std::string& key, const std::string& label, double value) {
    derived(all, key, label, value, Q::resistance,
            {say("mean rise of the pipe wall for 1 W from every metre of pipe"), response_from(),
             translated(kSource)});
  };
  response("heat.response_hour", say("Resistance of the ground after an hour"), t.response_hour);
  response("heat.response_month", say("Resistance of the ground after a month"), t.response_month);
  response("heat.response_ten_years", say("Resistance of the ground after ten years"), t.response_ten_years);
}

void add_ground(Figures& all, const Temperatures& t) {
  const auto [low, high] = std::minmax_element(t.ground.begin(), t.ground.end());
  const auto add = [&](const std::string& key, const std::string& label,
                       std::vector<double>::const_iterator at) {
    derived(all, key, label + ", " + date_of_day(static_cast<int>(at - t.ground.begin()) / 24), *at,
            Q::temperature,
            {say("mean over the pipe, each at its depth, of mean - amplitude exp(-z/d) cos(2 pi (day - "
                 "coldest)/365 - z/d), d = sqrt(365 a/pi)"),
             {"climate.mean", "climate.amplitude", "climate.coldest_day", "dig.trench_depth", "dig.run_depth",
              "soil.diffusivity"},
             translated(kGround)});
  };
  add("heat.ground_coldest", say("Coldest untouched ground at the pipe"), low);
  add("heat.ground_warmest", say("Warmest untouched ground at the pipe"), high);
}

How simulated() {
  return {
      say("hour by hour: wall = ground - superposed heat x R(t); entering = wall - q R_fluid + q L/(2 m c); "
          "heat pump solved in every hour"),
      {"heat.response_ten_years", "heat.fluid_resistance", "heat.ground_coldest", "heat.ground_warmest",
       "house.heating", "house.cooling", "unit.heating_capacity", "unit.heating_power",
       "unit.cooling_capacity", "unit.cooling_power"},
      say("superposition in time, Carslaw & Jaeger 1.14")};
}

void add_extremes(Figures& all, const std::string& key, const std::string& year, const YearSum& y) {
  if (y.coldest_hour >= 0)
    derived(all, key + ".coldest", say("Coldest entering water, {}, {}", year, date_of_hour(y.coldest_hour)),
            y.coldest, Q::temperature, simulated());
  if (y.warmest_hour >= 0)
    derived(all, key + ".warmest", say("Warmest entering water, {}, {}", year, date_of_hour(y.warmest_hour)),
            y.warmest, Q::temperature, simulated());
}

void add_years(Figures& all, const Temperatures& t) {
  const auto& years = t.simulation.years;
  add_extremes(all, "heat.first", say("first year"), years.front());
  if (years.size() > 10) add_extremes(all, "heat.tenth", say("tenth year"), years[9]);
  if (years.size() > 1)
    add_extremes(all, "heat.last", say("year {}", std::to_string(years.size())), years.back());
}

void add_margins(Figures& all, const Temperatures& t) {
  if (t.simulation.coldest < 1e8) {
    derived(all, "heat.coldest", say("Coldest entering water of the design life"), t.simulation.coldest,
            Q::temperature, {say("least over the years"), {"heat.first.coldest", "heat.years"}, ""});
    derived(all, "heat.margin_cold", say("Room above the coldest allowed"),
            t.simulation.coldest - all.at("heat.coldest_allowed").value, Q::temperature_difference,
            {say("coldest - coldest allowed"), {"heat.coldest", "heat.coldest_allowed"}, ""});
    derived(
        all, "heat.margin_warm", say("Room below the warmest allowed"),
        all.at("heat.warmest_allowed").value - t.simulation.warmest, Q::temperature_difference,
        {say("warmest allowed - warmest"), {"heat.first.warmest", "heat.years", "heat.warmest_allowed"}, ""});
  }
}

void add_energy(Figures& all, const YearSum& y) {
  const auto add = [&](const std::string& key, const std::string& label, double joules) {
    derived(all, key, label, joules, Q::energy, simulated());
  };
  add("heat.from_ground", say("Heat taken from the ground, last year"), y.from_ground);
  add("heat.to_ground", say("Heat given to the ground, last year"), y.to_ground);
  add("heat.heating_power", say("Electricity of the unit for heating, last year"), y.heating_power);
  add("heat.cooling_power", say("Electricity of the unit for cooling, last year"), y.cooling_power);
  add("heat.pump_power", say("Electricity of the circulator, last year"), y.pump_power);
  add("heat.backup", say("Back-up heat, last year"), y.backup);
  add("heat.unmet_cooling", say("Cooling that the unit cannot give, last year"), y.unmet_cooling);
  derived(all, "heat.electricity", say("Electricity in all, back-up included, last year"), y.electricity(),
          Q::energy,
          {say("unit + circulator + back-up heat"),
           {"heat.heating_power", "heat.cooling_power", "heat.pump_power", "heat.backup"},
           ""});
}

void add_seasonal(Figures& all, const YearSum& y) {
  const double by_unit = y.heating - y.backup, cooled = y.cooling - y.unmet_cooling;
  if (y.heating_power > 0)
    derived(all, "heat.seasonal_heating", say("Seasonal performance in heating, unit alone"),
            by_unit / y.heating_power, Q::count,
            {say("(heat needed - back-up) / electricity of the unit"),
             {"house.heating", "heat.backup", "heat.heating_power"},
             ""});
  if (y.cooling_power > 0)
    derived(all, "heat.seasonal_cooling", say("Seasonal performance in cooling, unit alone"),
            cooled / y.cooling_power, Q::count,
            {say("(cooling needed - not met) / electricity of the unit"),
             {"house.cooling", "heat.unmet_cooling", "heat.cooling_power"},
             ""});
  if (y.electricity() > 0)
    derived(all, "heat.seasonal", say("Seasonal performance of the whole, circulator and back-up included"),
            y.performance(), Q::count,
            {say("(heat needed + cooling met) / electricity in all"),
             {"house.heating", "house.cooling", "heat.unmet_cooling", "heat.electricity"},
             ""});
}

void add_hours(Figures& all, const YearSum& y) {
  derived(all, "heat.frozen", say("Time in which the pipe wall is below freezing, last year"),
          3600.0 * y.hours_wall_frozen, Q::duration, simulated());
  derived(all, "heat.outside_table",
          say("Time in which the water is outside the performance table, last year"),
          3600.0 * y.hours_outside_table, Q::duration, simulated());
}

}  // namespace

void add_temperatures(Figures& all, const Outcome& outcome) {
  const Temperatures& t = *outcome.temperatures;
  if (t.simulation.years.empty()) return;
  const YearSum& last = t.simulation.years.back();
  add_loop(all, t);
  add_ground(all, t);
  add_years(all, t);
  add_margins(all, t);
  add_energy(all, last);
  add_seasonal(all, last);
  add_hours(all, last);
}

}  // namespace underlawn::figures
