// SPDX-License-Identifier: GPL-3.0-or-later
// The antifreeze of a filled loop: what to buy and what it is good for.
#pragma once

#include <optional>
#include <string>

#include "flow/flow_wishes.h"

namespace underlawn {

struct Antifreeze {
  double mass_fraction = 0;    // kg per kg of solution
  double volume_fraction = 0;  // volumes at 20 deg C before mixing, as the trade's tables count
  double volume = 0;           // m3 of solution: the loop
  double concentrate = 0;      // m3 of pure antifreeze at 20 deg C; what is sold may hold water and inhibitor
  double freezing_point = 0;   // deg C, where ice first forms
  double wanted_freezing = 0;  // deg C: coldest temperature less the margin, at most 0
  std::optional<double> recommended;  // least mass fraction for that; none where this antifreeze cannot
  bool enough = false;
  std::string below_freezing;  // what happens under the freezing point
  std::string caution;         // fluid_caution
};

// kg/m3 of the pure antifreeze at 20 deg C: CRC Handbook (from memory). Water for water.
double pure_density(Fluid fluid);
// Volumes before mixing: (x/rho_a)/(x/rho_a + (1 - x)/rho_w). `mass_fraction` 0..1.
double volume_fraction(Fluid fluid, double mass_fraction);

// `volume` m3 > 0. Refuses a concentration beyond the correlation.
Result<Antifreeze> antifreeze_for(const FlowWishes& wishes, double volume);

}  // namespace underlawn
