// SPDX-License-Identifier: GPL-3.0-or-later
// What to beware of when a loop is under pressure.
#pragma once

#include <string>
#include <vector>

#include "base/quantity.h"
#include "flow/loop_volume.h"

namespace underlawn {

// J set free when a loop of `volume` m3 at `pressure` Pa gauge bursts: filled with air, which expands without
// heat (ASME PCC-2, app. 501-II, as given at piping-world.com), and with water; both with the stretched pipe.
struct StoredEnergy {
  double air = 0, water = 0;
  double ratio() const { return water > 0 ? air / water : 0; }
};
StoredEnergy stored_energy(const LoopVolume& loop, double pressure);

// Sentences for the sheet and the screen.
std::vector<std::string> test_cautions(const LoopVolume& loop, double pressure,
                                       UnitSystem units = UnitSystem::metric);

}  // namespace underlawn
