// SPDX-License-Identifier: GPL-3.0-or-later
// A house in one block: the short load calculation that a contractor can fill in on site.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "house/load.h"

namespace underlawn {

// One part of the envelope: a wall without its windows, the windows, the roof, the floor.
struct Surface {
  std::string name;    // "North wall"
  double area = 0;     // m2, above 0, at most 100 000
  double u_value = 0;  // W/(m2 K), above 0, at most 10
  bool operator==(const Surface&) const = default;
};

struct BlockHouse {
  std::vector<Surface> surfaces;
  double volume = 0;            // m3 of heated air; 0: floor area times ceiling height
  double floor_area = 0;        // m2, heated, all floors
  double ceiling_height = 2.5;  // m, 1.8..12
  double air_change = 0.4;      // per hour, 0..20, with outdoor air; less what a heat recovery gives back
  double gains = 500;           // W, people, lamps and appliances in the mean, 0..100 000
  bool cooled = true;           // false: no cooling, and the fields of the warm day are not looked at
  double solar_gains = 2000;    // W, sun through glass at the hour of the warm design day, 0..100 000
  double moisture_gains = 0;    // W, drying the air at that hour (latent), 0..100 000
  double indoor_heating = 20;   // deg C, 5..35
  double indoor_cooling = 24;   // deg C, 5..35, not below indoor_heating
  double outdoor_cold = -15;    // deg C, -70..60, the cold design day
  double outdoor_warm = 33;     // deg C, -70..60, the warm one
  bool operator==(const BlockHouse&) const = default;
};

// m3: what was typed, or floor area times height.
double heated_volume(const BlockHouse& house);
// W/K: sum of U A, and 0.335 W h/(m3 K) for each air change (air of 1.2 kg/m3, 1006 J/(kg K)).
double loss_coefficient(const BlockHouse& house);
// W at the cold design day: coefficient times indoor less outdoor. No gains are taken off, as on a night when
// nobody is home.
double block_heat_loss(const BlockHouse& house);
// W at the warm design day: coefficient times outdoor less indoor (negative where it is cooler outside), and
// all the gains. Never below 0; 0 where the house is not cooled.
double block_heat_gain(const BlockHouse& house);
// deg C: indoor - gains/coefficient (ASHRAE Fundamentals). Sun and moisture are left out of both, because
// they belong to the design hour and not to the mean.
double balance_temperature(const BlockHouse& house, double indoor);

// Whether the year's heat is to start from the whole loss of the cold day or from what is left of it after
// the gains. Left out: the peak is what load calculations give, and the heat of the year comes out high, by
// dT/(dT - gains/coefficient) with dT indoor less outdoor. Taken off: the heat of the year is coefficient
// times degree-days exactly, and the peak is the lower one.
enum class GainsAtDesign { left_out, taken_off };

// Refuses, by name: no surface, and every number out of the range beside it above; gains that carry the house
// through the cold design day; a warm day that needs no cooling in a house that is cooled.
Result<DesignLoad> design_load_from_block(const BlockHouse& house,
                                          GainsAtDesign at_design = GainsAtDesign::left_out);

}  // namespace underlawn
