// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/antifreeze.h"

#include <algorithm>

#include "base/say.h"

namespace underlawn {
namespace {

constexpr double kFilled = 20;    // deg C
constexpr double kWater = 998.2;  // kg/m3 at kFilled

double filled_density(Fluid fluid, double x) {
  return fluid == Fluid::water ? kWater : fluid_properties(fluid, x, kFilled).value().density;
}

}  // namespace

double pure_density(Fluid fluid) {
  switch (fluid) {
    case Fluid::water:
      return kWater;
    case Fluid::propylene_glycol:
      return 1036;
    case Fluid::ethanol:
      return 789;
    case Fluid::methanol:
      return 791;
    case Fluid::ethylene_glycol:
      return 1113;
  }
  return kWater;
}

double volume_fraction(Fluid fluid, double x) {
  if (fluid == Fluid::water) return 0;
  const double a = x / pure_density(fluid), w = (1 - x) / kWater;
  return a / (a + w);
}

Result<Antifreeze> antifreeze_for(const FlowWishes& w, double volume) {
  const auto freezes = freezing_point(w.fluid, w.mass_fraction);
  if (!freezes) return refuse(freezes.error());
  Antifreeze a;
  a.mass_fraction = w.fluid == Fluid::water ? 0 : w.mass_fraction;
  a.volume_fraction = volume_fraction(w.fluid, a.mass_fraction);
  a.volume = volume;
  a.concentrate = a.mass_fraction * filled_density(w.fluid, a.mass_fraction) * volume / pure_density(w.fluid);
  a.freezing_point = *freezes;
  a.wanted_freezing = std::min(0.0, w.coldest_temperature - w.freeze_margin);
  if (const auto x = concentration_for(w.fluid, a.wanted_freezing)) a.recommended = *x;
  a.enough = a.freezing_point <= a.wanted_freezing;
  a.below_freezing =
      w.fluid == Fluid::water
          ? say("Water turns to solid ice, grows by 9 % and can burst pipe and heat exchanger.")
          : say("Below its freezing point the solution turns to slush, which stops the flow "
                "before it can burst a "
                "pipe. Burst protection of makers' tables is a lower temperature and no limit for "
                "a running loop.");
  a.caution = fluid_caution(w.fluid);
  return a;
}

}  // namespace underlawn
