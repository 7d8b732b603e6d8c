// SPDX-License-Identifier: GPL-3.0-or-later
// One plain sentence for each way: the same on screen and at the command line.
#pragma once

#include "dig/dig_words.h"
#include "plan/ways.h"

namespace underlawn {

std::string compass_line(const Site& site, double direction);   // "from north to south"; rad
std::string other_side_words(const Site& site, Point outward);  // of the wall that is closed
std::string other_direction_words(const Site& site, double direction, double now);
std::string groups_words(int groups);
std::string run_coil_words(bool coil);
std::string fewer_deeper_words(const Wishes& now, const Wishes& then, UnitSystem units);
std::string upright_words(const Wishes& then, UnitSystem units);
std::string metres_words(const Wishes& then, UnitSystem units);

// What stands between two groups, where that is one thing: "Two groups, on either side of the drive".
std::string told_of_groups(const Site& site, const Layout& layout, const std::string& usual);

}  // namespace underlawn
