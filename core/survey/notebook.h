// SPDX-License-Identifier: GPL-3.0-or-later
// Where the points of the notebook lie on the plan, each from known points or from those before it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/quantity.h"
#include "base/result.h"
#include "site/map_place.h"
#include "survey/survey.h"

namespace underlawn {

struct KnownPoint {
  std::string name;  // "lot 3", "house A"
  Point at;
};

struct PlacedSighting {
  std::string name;
  Result<Point> at;
  // How surely two tapes fix it: the angle at which they meet, rad, 0..pi/2.
  std::optional<double> cut;
  std::optional<Segment> base;  // from, to; for drawing how it was found
};

// What the notebook is placed by.
struct NotebookSetting {
  std::vector<KnownPoint> known;
  std::optional<MapPlace> place;
  double north = 0;  // Site::north
  UnitSystem units = UnitSystem::us;
};

// In the notebook's order. A name is looked for among the known points, then in the notebook; capitals do not
// matter. Refuses, by point: a name that is not there, points that lead back to themselves, one and the same
// point as both, tapes that do not meet (naming by how much), numbers that are not finite, a satellite point
// where the plan has no place on the map, a place beyond the plan.
//   two distances: P with |P - from| = first, |P - to| = second, left or right of the way from -> to
//   station, offset: from + station along + offset to the right
//   bearing, distance: by the plan's north
std::vector<PlacedSighting> place_notebook(const Survey& survey, const NotebookSetting& setting);

inline constexpr double kTapesTouch = 0.002;  // m by which tapes may miss each other and still touch

// Names for points that come to a notebook, each unlike all others.
void name_freely(const std::vector<Sighting>& notebook, std::vector<Sighting>& points);
std::string free_name(const std::vector<Sighting>& notebook, const std::string& wanted);
std::string next_name(const std::vector<Sighting>& notebook);  // "P1", "P2", ...

}  // namespace underlawn
