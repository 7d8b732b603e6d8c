// SPDX-License-Identifier: GPL-3.0-or-later
// Where on the Earth the drawing lies, where that is known.
#pragma once

#include "plane/point.h"

namespace underlawn {

// The plan's plane is a transverse Mercator projection about this place (WGS 84, scale 1 on its meridian),
// turned so that its north is Site::north. So a metre of the plan is a metre on the ellipsoid, within one
// part in 10^7 up to 2 km from the place.
struct MapPlace {
  double latitude = 0;   // degrees north
  double longitude = 0;  // degrees east
  Point at;              // m, the point of the plan that lies there
  bool operator==(const MapPlace&) const = default;
};

}  // namespace underlawn
