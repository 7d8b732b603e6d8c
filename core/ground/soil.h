// SPDX-License-Identifier: GPL-3.0-or-later
// How well soil conducts and stores heat, by three published models that the designer can see side by side.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace underlawn {

enum class Grain { gravel, coarse, fine };  // gravel and coarse sand; medium and fine sand; silt and clay

// What a soil is made of.
struct SoilMatter {
  double porosity = 0.4;    // m3 of pores per m3, above 0 and below 1
  double quartz = 0.4;      // of the solids by volume, 0..1
  double saturation = 0.6;  // of the pores filled with water, 0..1
  Grain grain = Grain::coarse;
  bool operator==(const SoilMatter&) const = default;
};

enum class ConductivityModel { johansen, lu, cote_konrad };
std::string model_name(ConductivityModel model);
std::string model_source(ConductivityModel model);

// Dry density of the soil, kg/m3, with solids of 2700 kg/m3.
double dry_density(double porosity);
double porosity_from_density(double dry_density);
// Saturation from water by dry mass (0.15 = 15 %), and back.
double saturation_from_water(double water_by_mass, double porosity);

// W/(m K), unfrozen. Refuses a porosity, quartz content or saturation out of its bounds, and a saturation
// below what the model was measured for.
Result<double> conductivity(const SoilMatter& soil, ConductivityModel model);
// Parts of it, for the report. W/(m K).
double conductivity_of_solids(double quartz);                   // k_q^q k_o^(1-q), k_o 2.0 (q > 0.2) or 3.0
double saturated_conductivity(double porosity, double quartz);  // k_s^(1-n) k_w^n
double dry_conductivity(double porosity, ConductivityModel model, Grain grain);
double kersten_number(double saturation, ConductivityModel model, Grain grain);

// J/(m3 K), by volume: solids 2.0 MJ/m3 K (tables after de Vries 1963 have 1.94 to 2.39), water 4.18.
double heat_capacity(const SoilMatter& soil);

// Kersten 1949, from water by dry mass (as a fraction) and dry density; W/(m K), unfrozen. Sandy or
// silt-and-clay.
double kersten_conductivity(double water_by_mass, double dry_density, bool sandy);

// What heat flow needs of the ground. Diffusivity in m2/s.
struct SoilThermal {
  double conductivity = 1.4;     // W/(m K)
  double heat_capacity = 2.4e6;  // J/(m3 K)
  double diffusivity() const { return conductivity / heat_capacity; }
  bool operator==(const SoilThermal&) const = default;
};

// Soils by texture and moisture to start from; every number is shown and can be changed.
struct SoilPreset {
  std::string name;  // "Loam, moist"
  SoilMatter matter;
};
const std::vector<SoilPreset>& soil_presets();

}  // namespace underlawn
