// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plan/sizing/size_loop.h"

namespace underlawn {

// What is put beside the plan: 500, 600, 800, 1000 ft of pipe in the same trench (straight pipe in a trench
// as long as it needs), 1 and 2 ft deeper, 2 and 4 ft wider apart; in metric plans 150, 180, 240, 300 m, 0.3
// and 0.6 m, 0.6 and 1.2 m. What the plan has already is left out. Sizes are not yet found.
std::vector<Alternative> alternatives_to(const Plan& plan, const Coil& drawn);

}  // namespace underlawn
