// SPDX-License-Identifier: GPL-3.0-or-later
// Heads that a header reaches after it is drawn: of locked trenches, or of another group.
#pragma once

#include "layout/connect.h"

namespace underlawn {

// Adds a leg of the header to every head, the nearest first, each from the cheapest of the places reached
// already; `root` is one of those where nothing is drawn. `conduits` without the ground of any trench. A head
// that lies on the lines already is joined as it is; one that no way leads to stays unjoined.
void join_more(const Conduits& conduits, Point root, const std::vector<Point>& heads, Connection& connection);

}  // namespace underlawn
