// SPDX-License-Identifier: GPL-3.0-or-later
// The start of a supply run that has to pass places the designer chose.
#pragma once

#include "layout/connect.h"
#include "layout/layout.h"

namespace underlawn {

// The way out of the wall and from place to place, in order, to the last. Refuses by number a place that
// lies where no run may, or that no way leads to.
Result<Polyline> run_by_places(const Site& site, const Wishes& wishes, const Conduits& conduits);

}  // namespace underlawn
