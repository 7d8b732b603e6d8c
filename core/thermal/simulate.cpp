// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/simulate.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>
#include <utility>

#include "thermal/ground_memory.h"
#include "thermal/unit_in_hour.h"

namespace underlawn {
namespace {

constexpr double kHour = 3600;

class Simulator {
 public:
  explicit Simulator(const SimulationInput& in)
      : in_(in),
        memory_(in.loop.response, in.loop.pipe),
        pull_{in.loop.fluid_resistance / in.loop.pipe - 1 / (2 * in.loop.heat_flow_rate), memory_.one_hour()},
        heating_(in.unit.heating, true, pull_),
        cooling_(in.unit.cooling, false, pull_),
        heating_load_(std::accumulate(in.house.heating.begin(), in.house.heating.end(), 0.0)),
        cooling_load_(std::accumulate(in.house.cooling.begin(), in.house.cooling.end(), 0.0)) {}

  // One year; its days' heat to `daily`, its hours to `keep` where there is one.
  YearSum year(std::vector<double>& daily, HourState* keep) {
    YearSum sum;
    double day = 0;
    for (int h = 0; h < kYearHours; ++h) {
      if (h % 24 == 0 && h > 0) daily.push_back(std::exchange(day, 0) / 24);
      const double heating = in_.house.heating[h], cooling = in_.house.cooling[h];
      const double wall = in_.loop.ground[h] - memory_.fall();
      if (heating <= 0 && cooling <= 0) {
        memory_.learn(0);
        if (keep) keep[h] = {wall, wall, 0, 0, 0, 0};
        continue;
      }
      const bool warm = heating >= cooling;
      const UnitHour unit = (warm ? heating_ : cooling_).settle(wall, warm ? heating : cooling);
      memory_.learn(unit.mean);
      day += unit.mean;
      sum.hours_wall_frozen += wall - pull_.at_mean * unit.mean < 0;
      account(unit, warm, h, sum);
      if (keep) keep[h] = state(unit, warm, h);
    }
    daily.push_back(day / 24);
    close(sum);
    return sum;
  }

 private:
  HourState state(const UnitHour& unit, bool warm, int h) const {
    const double heating = in_.house.heating[h], cooling = in_.house.cooling[h];
    return {unit.entering,
            unit.entering - unit.full / in_.loop.heat_flow_rate,
            unit.mean,
            unit.run * (unit.power + in_.pump_power),
            warm ? std::max(0.0, heating - unit.capacity) : heating,
            warm ? cooling : std::max(0.0, cooling - unit.capacity)};
  }

  // Sums in W hours: of what the unit does, and of what it leaves.
  void account(const UnitHour& unit, bool warm, int h, YearSum& sum) const {
    const double load = warm ? in_.house.heating[h] : in_.house.cooling[h];
    (warm ? sum.from_ground : sum.to_ground) += warm ? unit.mean : -unit.mean;
    (warm ? sum.heating_power : sum.cooling_power) += unit.run * unit.power;
    if (load > unit.capacity) (warm ? sum.backup : sum.unmet_cooling) += load - unit.capacity;
    (warm ? sum.unmet_cooling : sum.backup) += warm ? in_.house.cooling[h] : in_.house.heating[h];
    sum.pump_power += unit.run;
    sum.hours_outside_table += unit.outside;
    sum.meet(unit.entering, h);
  }

  // The year's loads are the same every year; running hours become the circulator's work.
  void close(YearSum& year) const {
    year.heating = heating_load_;
    year.cooling = cooling_load_;
    year.pump_power *= in_.pump_power;
    for (double* sum : {&year.heating, &year.cooling, &year.from_ground, &year.to_ground, &year.heating_power,
                        &year.cooling_power, &year.pump_power, &year.backup, &year.unmet_cooling})
      *sum *= kHour;
  }

  const SimulationInput& in_;
  GroundMemory memory_;
  Pull pull_;
  UnitMode heating_, cooling_;
  double heating_load_, cooling_load_;  // W h a year
};

}  // namespace

bool Simulation::keeps_next(int all) const {
  const auto y = static_cast<int>(years.size());
  return y == 0 || y == 9 || y == all - 1;
}

void Simulation::add(const YearSum& year, const std::vector<HourState>& hours, int all) {
  const auto y = static_cast<int>(years.size());
  if (y == 0) first = hours;
  if (y == 9) tenth = hours;
  if (y == all - 1) last = hours;
  years.push_back(year);
  coldest = std::min(coldest, year.coldest);
  warmest = std::max(warmest, year.warmest);
}

Simulation simulate(const SimulationInput& input, std::stop_token stop) {
  assert(input.loop.pipe > 0 && input.loop.heat_flow_rate > 0);
  assert(input.loop.ground.size() == kYearHours && input.house.heating.size() == kYearHours &&
         input.house.cooling.size() == kYearHours);
  Simulator simulator(input);
  Simulation out;
  std::vector<HourState> hours(kYearHours);
  for (int y = 0; y < input.years && !stop.stop_requested(); ++y) {
    const bool keep = input.keep_every_hour || out.keeps_next(input.years);
    const YearSum year = simulator.year(out.daily_heat, keep ? hours.data() : nullptr);
    out.add(year, hours, input.years);
    if (input.keep_every_hour) out.every.insert(out.every.end(), hours.begin(), hours.end());
  }
  return out;
}

}  // namespace underlawn
