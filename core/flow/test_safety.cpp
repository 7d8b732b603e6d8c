// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/test_safety.h"

#include <cmath>

#include "base/quantity.h"
#include "base/say.h"
#include "flow/pressure_test.h"
#include "pipe/liquid_volume.h"

namespace underlawn {
namespace {

// In both systems, the one that is read first: gauges have either.
std::string print(double pressure, UnitSystem units) {
  const UnitSystem other = units == UnitSystem::us ? UnitSystem::metric : UnitSystem::us;
  return say("{} ({})", print_quantity(Quantity::pressure, pressure, units),
             print_quantity(Quantity::pressure, pressure, other));
}

}  // namespace

StoredEnergy stored_energy(const LoopVolume& loop, double pressure) {
  if (!check_loop(loop) || !(pressure > 0)) return {};
  constexpr double kGamma = 1.4;
  const double volume = loop_volume(loop), absolute = pressure + kAtmosphere;
  const PeCreep creep;
  const double pipe =
      volume * pressure * pressure / 2 * loop_compliance(loop, creep.poisson) / creep.modulus_one_hour;
  const double air =
      absolute * volume / (kGamma - 1) * (1 - std::pow(kAtmosphere / absolute, (kGamma - 1) / kGamma));
  return {air + pipe, volume * pressure * pressure / 2 / kLiquidBulkModulus + pipe};
}

std::vector<std::string> test_cautions(const LoopVolume& loop, double pressure, UnitSystem units) {
  const double ratio = stored_energy(loop, pressure).ratio();
  const std::string air =
      ratio > 1
          ? say("Test with water only. Filled with air at {} this loop would hold about {} times the energy, "
                "and a failing joint would let it go at once.",
                print(pressure, units), std::lround(ratio / 10) * 10)
          : say("Test with water only.");
  return {air,
          say("Let out all air before pumping up."),
          say("Stand clear of joints, caps and the trench while the loop is under pressure; nobody in the "
              "trench."),
          say("Tie down or backfill loose pipe and coils before pumping up; leave the joints in view."),
          say("Let the pressure off slowly, at the valve, before touching a joint."),
          say("Do not tighten, tap or mend anything under pressure.")};
}

}  // namespace underlawn
