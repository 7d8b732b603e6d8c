// SPDX-License-Identifier: GPL-3.0-or-later
// What stands in the way of a layout, in words.
#pragma once

#include "layout/connect.h"
#include "layout/layout.h"

namespace underlawn {

// The first number asked for that no layout can be made with.
std::optional<Trouble> wishes_trouble(const Wishes& wishes, const Coil& coil);

// Adds to the layout's troubles what it lacks: an entry point, trenches, a way to the house, heads joined.
void explain(const Site& site, const Wishes& wishes, const Conduits& conduits, int unjoined, Layout& layout);

}  // namespace underlawn
