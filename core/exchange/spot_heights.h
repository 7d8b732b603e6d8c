// SPDX-License-Identifier: GPL-3.0-or-later
// Heights of the ground out of a drawing: points that carry one, contours, numbers written beside a place.
#pragma once

#include "exchange/bring_in.h"

namespace underlawn {

// Of one shape: from the heights of its points, from an attribute called like one ("elevation", "contour",
// "z"), or from a text that is a number. Along a line at most one a metre. Heights are taken in the
// unit given, else in a raster's own, else in the placement's.
std::vector<SpotHeight> spot_heights(const Drawing& drawing, const Shape& shape, const Placement& placement,
                                     double height_unit = 0);

// Adds those that are not within kOneHeight of another; gives how many were not added.
long add_spot_heights(Site& site, const std::vector<SpotHeight>& heights);

}  // namespace underlawn
