// SPDX-License-Identifier: GPL-3.0-or-later
// A flat coil with its return pipe: how the pipe in one trench heats itself, seen from above.
#pragma once

#include <vector>

#include "field/coil.h"
#include "plane/point.h"
#include "thermal/kernel_nodes.h"
#include "thermal/step_response.h"

namespace underlawn {

// H(u) = double integral over loops and return pipe of exp(-u^2 rho^2), m2 at each node, along the true curve
// (not circles), ends included. `return_offset`: m from the middle line of the trench to the straight return
// pipe. Costs about a tenth of a second; depends on the coil alone, so keep it while trenches move.
KernelTable coil_kernel(const Coil& coil, double return_offset);

// The same of a coil that may bend with its trench.
KernelTable coil_kernel(const CoilInGround& coil);

// The coil as its neighbours feel it: straight strands along the trench (x from the head, y across) with the
// metres of pipe each stands for: `around` of them for the loops, one for the return. Six are good to 1 % for
// neighbours whose pipes are 2 m and more apart.
struct Strand {
  Segment line;
  double pipe = 0;    // m
  bool loops = true;  // not the return
};
std::vector<Strand> coil_strands(const Coil& coil, double return_offset, int around);

}  // namespace underlawn
