// SPDX-License-Identifier: GPL-3.0-or-later
// Layouts drawn by hand for the hydraulic stage; no placer is asked.
#pragma once

#include <vector>

#include "layout/layout.h"

namespace underlawn {

// A trench of number `number` with its head at `head`; a coil of `pipe` m, 60 m of it in loops where it is
// longer.
Trench hand_trench(int number, Point head, double pipe);

// The run leads `run` m along x to (0, 0). `left` heads at -spacing, -2 spacing, ... and `right` ones at
// spacing, 2 spacing, ... on legs along y, and one at (0, 0) if asked. Coils of `pipe` m.
Layout hand_layout(int left, int right, bool at_joint, double spacing = 4, double run = 20,
                   double pipe = 240);

// A coil pipe without loops: straight all the way, so that Darcy's formula by hand is the whole answer.
void straighten(Layout& layout);

}  // namespace underlawn
