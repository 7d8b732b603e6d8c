// SPDX-License-Identifier: GPL-3.0-or-later
// An upright coil with its return pipe: loops that stand in the plane of a trench.
#pragma once

#include <vector>

#include "thermal/step_response.h"

namespace underlawn {

// K(u) of the coil with itself, m2 at each node: plan and depth do not separate here as they do for a flat
// coil, so source and image are in it, and it is of one depth and one image. Along the true curve, ends
// included. `image_raise` as in make_step_response. Costs a third of coil_kernel, about a hundredth of a
// second.
KernelTable upright_kernel(const UprightInGround& coil, double image_raise);

// The coil as its neighbours feel it: strands of `owner`, each at its own depth, with the metres of pipe each
// stands for. Good to 1 % for neighbours 2 m and more apart.
std::vector<PipeInGround> upright_strands(const UprightInGround& coil, int owner);

// The coil and its strands.
void lay_upright(const UprightInGround& coil, PipesInGround& pipes);

}  // namespace underlawn
