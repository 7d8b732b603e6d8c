// SPDX-License-Identifier: GPL-3.0-or-later
// Another way to see air in the loop: how much water comes out when the pressure is let down.
#pragma once

#include "flow/loop_volume.h"

namespace underlawn {

// EN 805 annex A.27 (from memory): the most water that may come out of a sound pipe without air when its
// pressure is let down by `drop` Pa: 1.2 V dp (1/E_w + D/(e E_R)), m3. `wall_modulus` E_R, Pa, 8e8 for
// polyethylene at 20 C. More than that comes of air. Wall: (outside diameter - bore)/2.
Result<double> en805_most_water(const LoopVolume& loop, double drop, double wall_modulus = 8e8);

}  // namespace underlawn
