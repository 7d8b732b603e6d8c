// SPDX-License-Identifier: GPL-3.0-or-later
// The sizing in sentences: the same on screen and at the command line.
#pragma once

#include <string>
#include <vector>

#include "plan/sizing/chance.h"
#include "plan/sizing/size_loop.h"

namespace underlawn {

std::string needed_words(const LoopSizing& sizing);
std::string least_coil_words(const LoopSizing& sizing, UnitSystem units);
std::string alternative_name(const Alternative& alternative, UnitSystem units);  // "600 ft a trench"
// A line for each season that has an equation, and why it differs from the hours.
std::vector<std::string> classic_words(const LoopSizing& sizing, UnitSystem units);
std::string chance_words(const Chance& chance, UnitSystem units);

}  // namespace underlawn
