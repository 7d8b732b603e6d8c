// SPDX-License-Identifier: GPL-3.0-or-later
// The classic design-length equations of ground loops, as a second opinion beside the hours.
//   L_H = CAP_H (COP - 1)/COP (R_P + R_S F_H)/(T_L - T_min)
//   L_C = CAP_C (EER + 3.412)/EER (R_P + R_S F_C)/(T_max - T_H)
// Bose, Parker & McQuiston, Design/Data Manual for Closed-Loop Ground-Coupled Heat Pump Systems, ASHRAE 1985;
// IGSHPA installation guides (both from memory). (EER + 3.412)/EER is (COP + 1)/COP.
#pragma once

#include <optional>

#include "thermal/temperatures.h"

namespace underlawn {

// One season's equation, in any set of units that fit together.
struct ClassicCase {
  double capacity = 0;         // W to or from the house, of the unit at the limit, > 0
  double cop = 0;              // at the limit, > 1
  double pipe_resistance = 0;  // R_P, m K/W
  double soil_resistance = 0;  // R_S, m K/W
  double run_fraction = 0;     // F, 0..1, of the design month
  double ground = 0;           // deg C, T_L coldest or T_H warmest ground at the pipe
  double limit = 0;            // deg C, T_min or T_max of the water
  int month = 0;               // 0 January..11: the season's design month
};

// m of pipe. The ground must be warmer than the limit of the water in heating, and colder in cooling.
double classic_heating_length(const ClassicCase& c);
double classic_cooling_length(const ClassicCase& c);

struct ClassicLengths {
  std::optional<ClassicCase> heating, cooling;    // none without such a load, or where the ground is beyond
                                                  // the limit
  double heating_length = 0, cooling_length = 0;  // m, 0 where there is none
  double longest() const { return heating_length > cooling_length ? heating_length : cooling_length; }
};

// The cases of a laid loop. F is the mean load of the month with the most of it over the unit's capacity at
// the limit, at most 1. R_S is our own R(t) of the laid pipe after that one month. Neither is there where the
// hours of the load are the ground's own.
ClassicLengths classic_lengths(const Temperatures& laid, const Surroundings& surroundings,
                               const ThermalWishes& wishes);

}  // namespace underlawn
