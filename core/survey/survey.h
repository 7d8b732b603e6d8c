// SPDX-License-Identifier: GPL-3.0-or-later
// What was brought home from the deed and from the field, as written down: plain data, nothing derived.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plane/point.h"

namespace underlawn {

// What is done about the misclosure of the deed's traverse.
enum class ClosureChoice { as_written, compass_rule };

struct Deed {
  std::string text;  // the calls, as typed
  Point start;       // where on the plan the first course begins
  double turn = 0;   // rad clockwise from the plan's north to the deed's north
  ClosureChoice closure = ClosureChoice::as_written;
  double chord_tolerance = 0.01;  // m, how far chords may lie off a curve
  bool operator==(const Deed&) const = default;
};

// How a point was found in the field.
enum class SightingMethod {
  two_distances,       // taped from two known points
  station_offset,      // along a line between two known points, and square off it
  bearing_distance,    // from one known point
  latitude_longitude,  // by a satellite receiver; the plan's MapPlace ties it to the plan
  east_north,          // coordinates of a grid
};

// One line of the notebook. Only the numbers that its method names are used; the others keep their values, so
// that nothing is lost when the method is changed and back.
struct Sighting {
  std::string name;  // "P1"; unique in the notebook
  SightingMethod method = SightingMethod::two_distances;
  // Known points: "lot 3" (corner, counted from 1), "house A" (tag of a house corner), or the name of another
  // point of the notebook.
  std::string from;
  std::string to;                // two_distances, station_offset
  double first = 0;              // m: distance from `from`; station from `from` towards `to`; distance
  double second = 0;             // m: distance from `to`; offset, to the right of the way from `from` to `to`
  bool left = false;             // two_distances: the crossing to the left of the way from `from` to `to`
  double bearing = 0;            // rad clockwise from north
  double latitude = 0;           // deg north, WGS 84
  double longitude = 0;          // deg east, WGS 84
  double east = 0;               // m
  double north = 0;              // m
  std::optional<double> height;  // m
  std::string note;
  bool operator==(const Sighting&) const = default;
};

// Ties the coordinates of a grid to the plan; its north is the plan's.
struct GridTie {
  double east = 0;   // m
  double north = 0;  // m
  Point at;
  bool operator==(const GridTie&) const = default;
};

struct Survey {
  Deed deed;
  std::vector<Sighting> notebook;
  std::optional<GridTie> grid;
  bool operator==(const Survey&) const = default;
};

inline constexpr std::size_t kMostDeedText = 100'000;  // bytes
inline constexpr std::size_t kMostSightings = 5000;

}  // namespace underlawn
