// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <stop_token>

#include "layout/layout.h"

namespace underlawn {

// One thing that is held, let go: the wishes without it, and the way out in words.
struct LetGo {
  std::string thing, advice;
  Wishes wishes;
};

// For a locked trench, the line of a header, places of the run, a closed side, the direction, each by itself.
std::vector<LetGo> each_let_go(const Site& site, const Wishes& wishes);

// Where fewer circuits are placed than asked for: for each of them a Trouble when more would fit without it,
// with how many, and the way out.
std::vector<Trouble> held_troubles(const Site& site, const Wishes& wishes, const Coil& coil,
                                   const Region& routable, int placed, const std::stop_token& stop);

}  // namespace underlawn
