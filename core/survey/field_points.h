// SPDX-License-Identifier: GPL-3.0-or-later
// Points measured in the field, from files: CSV tables of a receiver or a data collector, and GPX.
#pragma once

#include <optional>
#include <string_view>

#include "base/quantity.h"
#include "base/result.h"
#include "survey/survey.h"

namespace underlawn {

// A table with named columns: latitude and longitude, or east and north, in any order and of usual spellings;
// a name, a height and a note where there are such columns. Degrees may be decimal, with or without N S E W,
// or degrees, minutes and seconds. East, north and height are in the unit that their column names
// ("easting_ft", "N (m)", "east_usft"), else in `units`' own, which is remarked on. Rows that cannot be read
// are left out and remarked on. Refuses a text without such columns, and one of which no row can be read.
Result<WithRemarks<std::vector<Sighting>>> points_from_csv(std::string_view text, UnitSystem units);

// Waypoints, then points of routes and tracks, of a GPX file (Topografix, GPX 1.1 schema). Points of tracks
// are named by their track: "Fence 1", "Fence 2". Refuses what is no GPX and what holds no point.
Result<WithRemarks<std::vector<Sighting>>> points_from_gpx(std::string_view text);

// Degrees as written for a latitude or longitude: 45.5, -45.5, 45°31'23.2" N, 122 30 W.
std::optional<double> degrees_in_text(std::string_view text, char mark = '.');

inline constexpr std::size_t kMostPointFile = 32 << 20;  // bytes

}  // namespace underlawn
