// SPDX-License-Identifier: GPL-3.0-or-later
// How finely a figure is shown, wherever it is, and in which units.
#pragma once

#include <string_view>

#include "base/quantity.h"

namespace underlawn::figures {

// Finer than other lengths: half an inch of pitch is 10 ft of pipe in a trench.
constexpr Fineness fineness_of_pitch(UnitSystem units) {
  return units == UnitSystem::us ? Fineness::fine : Fineness::normal;
}

// `usual`, but for pitches, and for what is so small that a digit less is a tenth of it: walls of pipe, what
// a unit of fuel emits.
constexpr Fineness fineness_of(std::string_view key, UnitSystem units, Fineness usual) {
  if (key.ends_with(".minimum_wall") || key.ends_with(".outside_diameter") || key.ends_with("_emission"))
    return Fineness::fine;
  return key.ends_with(".pitch") ? fineness_of_pitch(units) : usual;
}

// Electric power is spoken of in kilowatts in either system.
constexpr UnitSystem units_of(std::string_view key, UnitSystem units) {
  return key == "flow.pump.power" || key == "unit.heating_power" || key == "unit.cooling_power"
             ? UnitSystem::metric
             : units;
}

}  // namespace underlawn::figures
