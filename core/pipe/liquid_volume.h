// SPDX-License-Identifier: GPL-3.0-or-later
// How the liquid in the loop grows when it warms. Fine enough to take differences of: fluid_properties' water
// is not.
#pragma once

#include "base/result.h"
#include "pipe/fluid.h"

namespace underlawn {

inline constexpr double kLiquidBulkModulus = 2.1e9;  // Pa, water as EN 805 has it (from memory)

// kg/m3 at one atmosphere, 0..100 C, else refused. Kell 1975, J. Chem. Eng. Data 20:97, eq. 16.
Result<double> water_density(double temperature);

// Growth of a volume of liquid from one temperature to another, relative: density(from)/density(to) - 1.
// Water by Kell, solutions by fluid_properties; its refusals.
Result<double> liquid_growth(Fluid fluid, double mass_fraction, double from, double to);

}  // namespace underlawn
