// SPDX-License-Identifier: GPL-3.0-or-later
// What stays as it is while trenches move: the soil's numbers, the weather year, the house's hours.
#pragma once

#include <optional>
#include <vector>

#include "base/quantity.h"
#include "base/result.h"
#include "thermal/simulate.h"
#include "thermal/thermal_wishes.h"

namespace underlawn {

struct Surroundings {
  SoilThermal soil;
  GroundClimate climate;
  WeatherYear weather;
  HouseYear house;
  DesignLoad load;                   // where the hours follow from design points
  std::vector<double> ground_hours;  // W taken from the ground by hour, where a file gives those; else empty
};

// What is asked of the ground, the house and its unit, with the numbers checked.
std::vector<Trouble> thermal_troubles(const ThermalWishes& wishes, UnitSystem units = UnitSystem::metric);

// Nothing where thermal_troubles has something to say.
std::optional<Surroundings> make_surroundings(const ThermalWishes& wishes);

}  // namespace underlawn
