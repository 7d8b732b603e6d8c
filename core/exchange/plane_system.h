// SPDX-License-Identifier: GPL-3.0-or-later
// The coordinate systems of map_plane.h as the library knows them.
#pragma once

#include <ogr_spatialref.h>

#include "exchange/map_plane.h"

namespace underlawn {

OGRSpatialReference world_system();
OGRSpatialReference plane_system(const LatLon& about);

}  // namespace underlawn
