// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "layout/connect.h"

namespace underlawn {

// Why no run reaches the trenches: names what would have to go for a way to open, found by taking one thing
// away at a time.
Trouble no_way(const Site& site, const Wishes& wishes, const Conduits& conduits,
               const std::vector<Trench>& trenches);

// Names of what keeps the middle line of a run off this place; empty where nothing does.
std::string what_lies_at(const Site& site, const Wishes& wishes, Point p);

}  // namespace underlawn
