// SPDX-License-Identifier: GPL-3.0-or-later
#include "pipe/liquid_volume.h"

#include "base/quantity.h"
#include "base/say.h"

namespace underlawn {
namespace {

Result<double> density(Fluid fluid, double x, double t) {
  if (fluid == Fluid::water || x == 0) return water_density(t);
  return fluid_properties(fluid, x, t).map([](const FluidProperties& p) { return p.density; });
}

}  // namespace

Result<double> water_density(double t) {
  if (!(t >= 0 && t <= 100))
    return refuse({"water_temperature", say("temperature of the water"),
                   print_quantity(Quantity::temperature, t, UnitSystem::metric), say("0 to 100 C"),
                   say("Enter the water's temperature; below 0 C choose an antifreeze.")});
  const double above =
      999.83952 +
      t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
  return above / (1 + 16.879850e-3 * t);
}

Result<double> liquid_growth(Fluid fluid, double mass_fraction, double from, double to) {
  const auto a = density(fluid, mass_fraction, from);
  if (!a) return a;
  const auto b = density(fluid, mass_fraction, to);
  if (!b) return b;
  return *a / *b - 1;
}

}  // namespace underlawn
