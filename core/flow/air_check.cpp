// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/air_check.h"

#include <numbers>

#include "base/quantity.h"
#include "base/say.h"
#include "pipe/liquid_volume.h"

namespace underlawn {

Result<double> en805_most_water(const LoopVolume& loop, double drop, double wall_modulus) {
  if (auto ok = check_loop(loop); !ok) return tl::unexpected(ok.error());
  if (!(drop > 0 && drop < 1e7 && wall_modulus > 1e6 && wall_modulus < 1e12))
    return refuse({"test_drop", say("drop of pressure, with the wall's modulus"),
                   say("{}, {}", print_quantity(Quantity::pressure, drop, UnitSystem::metric),
                       print_quantity(Quantity::pressure, wall_modulus, UnitSystem::metric)),
                   say("both more than 0"), say("Enter by how much the pressure is let down.")});
  double most = 0;
  for (const PipeShare& p : loop.pipes) {
    const double wall = (p.outside_diameter - p.bore) / 2;
    most += 1.2 * std::numbers::pi / 4 * p.bore * p.bore * p.length * drop *
            (1 / kLiquidBulkModulus + p.bore / (wall * wall_modulus));
  }
  return most;
}

}  // namespace underlawn
