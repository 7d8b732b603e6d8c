// SPDX-License-Identifier: GPL-3.0-or-later
// How the designer describes the ground to the temperatures: by two numbers, or by what the soil is made of.
#pragma once

#include "ground/soil.h"

namespace underlawn {

enum class SoilSource { typed, matter };

// What is not used now is kept all the same, so that a look at the other way loses nothing.
struct SoilWishes {
  SoilSource source = SoilSource::matter;
  SoilThermal typed;                                   // also where a measured log's k is taken over
  SoilMatter matter{0.42, 0.60, 0.50, Grain::coarse};  // "Sandy loam, moist"
  ConductivityModel model = ConductivityModel::cote_konrad;
  bool operator==(const SoilWishes&) const = default;
};

// Conductivity and heat capacity by the source chosen. Refuses what the model refuses.
Result<SoilThermal> soil_thermal(const SoilWishes& wishes);

}  // namespace underlawn
