// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <stop_token>

#include "layout/layout.h"

namespace underlawn {

// Where fewer circuits are placed than asked for: for each thing that is held (a locked trench, the header's
// line, places of the run, a closed side, the direction), a Trouble when more would fit without it, with how
// many, and the way out. Each thing is tried alone.
std::vector<Trouble> held_troubles(const Site& site, const Wishes& wishes, const Coil& coil,
                                   const Region& routable, int placed, const std::stop_token& stop);

}  // namespace underlawn
