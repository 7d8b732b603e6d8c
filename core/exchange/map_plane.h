// SPDX-License-Identifier: GPL-3.0-or-later
// Between places on the Earth and the plane of a lot, by PROJ.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "site/map_place.h"

namespace underlawn {

struct LatLon {
  double latitude = 0;   // degrees north, WGS 84
  double longitude = 0;  // degrees east
  bool operator==(const LatLon&) const = default;
};

// A transverse Mercator plane about a place (WGS 84, scale 1 on its meridian, the place at 0, 0, north up).
// Points that cannot be projected come back as not-a-number.
std::vector<Point> to_plane(const LatLon& about, const std::vector<LatLon>& places);
std::vector<LatLon> from_plane(const LatLon& about, const std::vector<Point>& points);

// Points of a plan, for a MapPlace and the plan's north (rad from +x).
std::vector<Point> to_plan(const MapPlace& place, double north, const std::vector<LatLon>& places);
std::vector<LatLon> from_plan(const MapPlace& place, double north, const std::vector<Point>& points);

// The plane's definition as OGC well-known text.
std::string plane_wkt(const LatLon& about);

}  // namespace underlawn
