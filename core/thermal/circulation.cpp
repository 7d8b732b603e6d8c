// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/circulation.h"

#include <numbers>

#include "pipe/friction.h"

namespace underlawn {

Film film_in(const PipeSize& size, const FluidProperties& fluid, double flow) {
  const double bore = size.average_bore();
  const double velocity = flow / (std::numbers::pi * bore * bore / 4);
  Film film;
  film.reynolds = velocity * bore * fluid.density / fluid.viscosity;
  const double nu = nusselt(film.reynolds, fluid.prandtl(), friction_factor(film.reynolds));
  film.resistance = fluid_resistance(size.outside_diameter, bore, kPolyethyleneConductivity,
                                     nu * fluid.conductivity / bore);
  return film;
}

}  // namespace underlawn
