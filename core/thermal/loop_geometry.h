// SPDX-License-Identifier: GPL-3.0-or-later
// The laid loop as the ground feels it.
#pragma once

#include "layout/layout.h"
#include "thermal/step_response.h"

namespace underlawn {

// Supply and return lie this far apart in the header and run trench. Common practice, no source.
inline constexpr double kRunPipesApart = 0.3;  // m

// The return pipe of a coil that lies flat runs back along the middle of the trench, on the loops, as it is
// drawn and as the crew is told.
inline constexpr double kReturnAside = 0;  // m

// Coils on the trench floor, the return pipe of upright ones where it was asked for; straight pipe at the
// depth of its level, its turns (under 1 % of it) left out; header and run as two pipes on their floor.
// Trenches that nothing was placed in are left out. In a trench that bends every leg has its straight pipes,
// as long as the leg, and its piece of the coil.
PipesInGround pipes_in_ground(const Layout& layout, const Wishes& wishes);

}  // namespace underlawn
