// SPDX-License-Identifier: GPL-3.0-or-later
// The coordinates of a file made metres of a plane on the Earth, where it says where it lies.
#pragma once

#include <ogr_spatialref.h>

#include <memory>
#include <string>
#include <vector>

#include "exchange/drawing.h"

namespace underlawn {

using CoordinateSystems = std::vector<std::unique_ptr<OGRSpatialReference>>;  // of each layer; may be none

// Degrees that no system is named for are taken as longitude and latitude, and that is remarked on. What its
// system cannot tell the place of is left out. Without any place the coordinates are brought near (0, 0).
void place_on_earth(Drawing& out, CoordinateSystems& systems);

// Of what the library gives: UTF-8, and not longer than a person reads.
std::string short_text(const char* text);

}  // namespace underlawn
