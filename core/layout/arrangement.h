// SPDX-License-Identifier: GPL-3.0-or-later
// A way to lie for the field trenches, before header and run are drawn.
#pragma once

#include <stop_token>
#include <vector>

#include "layout/directions.h"
#include "layout/trench_size.h"
#include "layout/zones.h"

namespace underlawn {

// What a direction that follows nothing drawn is held to cost: crews set out by eye along a wall or the lot
// line.
inline constexpr double kOddBearing = 6;  // m of plain digging

struct Arrangement {
  Bearing bearing;
  std::vector<Segment> trenches;               // a: head, b: far end; in the plane of the lot
  std::vector<std::vector<Point>> bends = {};  // of the first so many of them, between head and end
  // Heads of one column lie on one line, across the trenches; the header follows it.
  bool in_line = false;
  double estimate = 0;  // m of plain digging, header and run, before they are routed
  bool shown = false;   // it lies as it was last shown, or as near to that as is legal
};

Polyline line_of(const Arrangement& arrangement, std::size_t trench);  // head, bends, end

// Straight-line guess of how far it is from the house to a header, round the house itself.
class Approach {
 public:
  Approach(const Site& site, double clear_of_house);
  double distance_to(const Segment& header) const;              // m; 0 without an entry point
  double at_least_to(double x, double low, double high) const;  // upright header; never more, and quicker
  // The same round blocks of trenches too (convex rings that the line may not cut).
  double distance_round(const Segment& header, const std::vector<Ring>& blocks) const;
  Approach turned(double angle) const;  // the same in the plane turned by -angle

 private:
  struct Waypoint {
    Point at;
    double way = 0;  // m from the entry point
  };
  bool house_between(Point a, Point b) const;
  std::vector<Ring> houses_;
  std::vector<Waypoint> waypoints_;
};

// One direction searched: what fits, and the arrangements worth routing.
struct Searched {
  int fits = 0;
  std::vector<Arrangement> found;
};

struct Search {
  const Confines& ground;      // for coil trenches, in the plane of the lot
  const Confines& for_header;  // for header and run
  const Approach& approach;
  TrenchSize size;
  double run_width = 0;    // m
  int wanted = 0;          // field trenches
  bool one_sided = false;  // no columns that face each other: the run is to lie open for a coil
  bool one_fewer = false;  // look for arrangements that leave one coil to the run too
  int most = 0;            // stop counting here
  bool mixed = false;      // look for trenches neither all in rows nor all in columns too
};

inline constexpr double kAnyPrice = 1e9;  // m of plain digging

// Quick look: how many fit in columns and, where that is `at_least` so many, the best guess of the digging.
// With a price below kAnyPrice only what is guessed below it is looked at, and the count is of that alone.
Searched look(const Search& search, const Bearing& bearing, int at_least, double dearest);
// Every column position and, at any price, the densest rows; else only columns below the price. Arrangements
// of fewer than `at_least` trenches are not asked for.
Searched search_fully(const Search& search, const Bearing& bearing, double dearest, int at_least);

}  // namespace underlawn
