// SPDX-License-Identifier: GPL-3.0-or-later
// Sides of the house that the owner wants left alone.
#pragma once

#include "base/result.h"
#include "layout/wishes.h"
#include "site/site.h"

namespace underlawn {

// The part of the lot's bounding box that lies beyond the line of the wall; no points where nothing does.
// Refuses a house or wall that is not there.
Result<Ring> beyond_wall(const Site& site, const ClosedSide& side);

// The site with ground beyond closed walls as areas that trenches may not lie in and header and run may
// cross: easements without clearance, their ids above those of all features, in the order of wishes.closed.
// What is refused is left out.
Site with_closed_sides(const Site& site, const Wishes& wishes);
// Which of wishes.closed such a feature stands for; -1: none, it was drawn.
int closed_side_of(const Site& site, const Wishes& wishes, int feature_id);

// What beyond_wall refuses of what the wishes close, one Trouble each.
std::vector<Trouble> closed_side_troubles(const Site& site, const Wishes& wishes);

}  // namespace underlawn
