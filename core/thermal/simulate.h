// SPDX-License-Identifier: GPL-3.0-or-later
// The loop and the heat pump, hour by hour for decades.
//
// At the end of each hour, with q the heat taken from a metre of pipe (W/m, negative when cooling rejects
// heat):
//   wall      Tw  = Tu(t) - sum over past hours of q_m [R_{j-m+1} - R_{j-m}]      (superposition, R as
//   exponentials) fluid     Tf  = Tw - q_run R_fluid         while the unit runs; q_run is its heat at full
//   run, q the hour's mean entering  EWT = Tf + q_run L/(2 C),        C = mass flow x specific heat
// Capacity and power follow EWT, so heat pump and ground are solved together in each hour (Newton).
#pragma once

#include <stop_token>
#include <vector>

#include "house/heat_pump.h"
#include "thermal/exponentials.h"

namespace underlawn {

inline constexpr int kYearHours = 8760;

struct LoopModel {
  ExponentialSum response;      // m K/W
  double pipe = 0;              // m, all that exchanges heat, > 0
  double fluid_resistance = 0;  // m K/W: wall of the pipe and film
  double heat_flow_rate = 0;    // W/K: mass flow x specific heat while the unit runs, > 0
  std::vector<double> ground;   // deg C, undisturbed at pipe depth, kYearHours values
};

struct HouseYear {
  std::vector<double> heating;  // W, kYearHours values >= 0
  std::vector<double> cooling;  // W; an hour with both is met by the larger's mode
};

struct HourState {
  double entering = 0;       // deg C, water to the heat pump; the loop's mean when the unit is off
  double leaving = 0;        // deg C, water back to the ground
  double ground_heat = 0;    // W, mean of the hour, taken from the ground (+) or given to it (-)
  double power = 0;          // W, mean of the hour, heat pump and circulator
  double backup = 0;         // W, mean of the hour, heat the unit could not give
  double unmet_cooling = 0;  // W
};

struct YearSum {
  double heating = 0, cooling = 0;                              // J, loads
  double from_ground = 0, to_ground = 0;                        // J
  double heating_power = 0, cooling_power = 0, pump_power = 0;  // J
  double backup = 0, unmet_cooling = 0;                         // J
  double coldest = 1e9, warmest = -1e9;      // deg C, entering, of hours in which the unit ran
  int coldest_hour = -1, warmest_hour = -1;  // 0..8759
  int hours_outside_table = 0;               // entering temperature beyond the performance table
  int hours_wall_frozen = 0;                 // pipe wall below 0 deg C

  // J: unit, circulator and back-up heat.
  double electricity() const { return heating_power + cooling_power + pump_power + backup; }
  // Heat needed and cooling met over the electricity; 0 where there is none.
  double performance() const {
    return electricity() > 0 ? (heating + cooling - unmet_cooling) / electricity() : 0;
  }
  void meet(double entering, int hour) {
    if (entering < coldest) coldest = entering, coldest_hour = hour;
    if (entering > warmest) warmest = entering, warmest_hour = hour;
  }
};

struct SimulationInput {
  LoopModel loop;
  HouseYear house;  // the same every year
  HeatPump unit;
  double pump_power = 0;  // W of the circulator while the unit runs
  int years = 25;
  bool keep_every_hour = false;
};

struct Simulation {
  std::vector<YearSum> years;
  std::vector<HourState> first, tenth, last;  // kYearHours each; tenth empty when there are fewer years
  std::vector<HourState> every;               // all hours in order, where asked for
  std::vector<double> daily_heat;             // W taken from the ground, mean of each day of all years
  double coldest = 1e9, warmest = -1e9;       // deg C, entering, over all years

  // A year is over, of `years`: its sum, and its hours where they are among those kept.
  void add(const YearSum& year, const std::vector<HourState>& hours, int years);
  // Whether the next year's hours are among those kept.
  bool keeps_next(int years) const;
};

// Deterministic. Asked to stop, returns with the years done so far.
Simulation simulate(const SimulationInput& input, std::stop_token stop = {});

}  // namespace underlawn
