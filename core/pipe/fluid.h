// SPDX-License-Identifier: GPL-3.0-or-later
// Water and antifreeze solutions as the loop meets them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace underlawn {

enum class Fluid { water, propylene_glycol, ethanol, methanol, ethylene_glycol };
std::string fluid_name(Fluid fluid);
std::string fluid_caution(Fluid fluid);  // toxicity, flammability, local rules; printed beside the choice

struct FluidProperties {
  double density = 0;        // kg/m3
  double specific_heat = 0;  // J/(kg K)
  double conductivity = 0;   // W/(m K)
  double viscosity = 0;      // Pa s, dynamic
  double prandtl() const { return specific_heat * viscosity / conductivity; }
};

inline constexpr double kMostConcentration = 0.60;  // kg of antifreeze per kg of solution

// deg C at which ice first forms. `mass_fraction` 0..kMostConcentration, else a refusal. Volume percent is
// another thing: 20 % by mass of propylene glycol is 19.4 % by volume.
Result<double> freezing_point(Fluid fluid, double mass_fraction);
// The least mass fraction that freezes at `temperature` (deg C) or below; refused where none does.
Result<double> concentration_for(Fluid fluid, double temperature);
// Antifreezes: Melinder 2010, Properties of Secondary Working Fluids for Indirect Systems (IIR), coefficients
// as in the open CoolProp source ("Melinder2010"). Water: the same polynomials at no antifreeze (0.2 % in
// density, 0.4 % in specific heat). Refused below the freezing point, above the correlation's temperature,
// beyond its concentration.
Result<FluidProperties> fluid_properties(Fluid fluid, double mass_fraction, double temperature);

}  // namespace underlawn
