// SPDX-License-Identifier: GPL-3.0-or-later
// What the temperatures of the loop follow from, besides the field itself.
#pragma once

#include "ground/soil.h"
#include "ground/undisturbed.h"
#include "house/heat_pump.h"
#include "house/load.h"
#include "house/weather.h"
#include "pipe/fluid.h"

namespace underlawn {

struct ThermalWishes {
  SoilThermal soil;
  GroundClimate climate;             // taken from the weather where the designer types nothing better
  double surface_resistance = 0.07;  // m2 K/W of grass and air: 0.04 bare and windy to 0.12 long grass
  MonthlyNormals normals{"Typical cool-temperate town (numbers of our own)",
                         {-5, -4, 1, 8, 14, 19, 22, 21, 17, 10, 4, -2},
                         {9, 9, 10, 11, 12, 12, 12, 12, 11, 10, 9, 8}};
  DesignLoad load;
  HeatPump unit = generic_heat_pump();
  Fluid fluid = Fluid::propylene_glycol;
  double mass_fraction = 0.20;
  double flow = 5.7e-4;           // m3/s while the unit runs: 9 gpm, 3 gpm a ton (common practice, no source)
  double pump_power = 150;        // W
  double coldest_allowed = -1.1;  // deg C entering water: 30 F
  double warmest_allowed = 35;    // deg C: 95 F
  int years = 25;
  bool operator==(const ThermalWishes&) const = default;
};

}  // namespace underlawn
