// SPDX-License-Identifier: GPL-3.0-or-later
// Areas of the lot and what can be done with them. Boolean operations and offsets run on a robust integer
// clipper (grid kGrid); measures and predicates run on Boost.Geometry. A result is right or there is an error
// naming the ring.
#pragma once

#include <string_view>
#include <vector>

#include "base/result.h"
#include "plane/point.h"

namespace underlawn {

struct Polygon {
  Ring outer;               // counter-clockwise
  std::vector<Ring> holes;  // clockwise
  bool operator==(const Polygon&) const = default;
};

using Region = std::vector<Polygon>;  // disjoint interiors; empty means nothing

inline constexpr double kGrid = 1e-5;           // m, the clipper's integer step
inline constexpr double kLargestPlan = 10'000;  // m, |x| and |y| of any coordinate
inline constexpr int kMostRingPoints = 20'000;

// A drawn ring made usable: repeated and collinear points dropped, counter-clockwise. Refuses: fewer than
// three distinct points, a coordinate that is not finite or beyond kLargestPlan, more than kMostRingPoints, a
// ring that crosses itself, no area. A ring that only touches itself is accepted. `name` is used in the
// message.
Result<Ring> checked_ring(const Ring& drawn, std::string_view name);

// Ring of any winding and self-touching to a region (non-zero winding).
Region region_of(const Ring& ring);
Region unite(const std::vector<Region>& parts);
Region subtract(const Region& from, const Region& what);
Region intersect(const Region& a, const Region& b);

// All points within `by` of the region (by > 0), or all points of the region farther than -by from its
// outside (by < 0). Circumscribed: never too small when growing, never too large when shrinking. Straight
// sides are exact to two steps of the grid, corners stand out by at most 1 % of `by`, with six corners to a
// quarter turn.
Region grown(const Region& r, double by);
// All points within `by` of the line or point, likewise; nothing for by <= 0.
Region buffered(const Polyline& line, double by);
Region buffered(Point centre, double by);

double area(const Region& r);   // m2, holes taken off
double area(const Ring& ring);  // m2, always positive
double perimeter(const Ring& ring);
Point centroid(const Ring& ring);
Box bounds(const Ring& ring);
Box bounds(const Region& r);

bool contains(const Region& r, Point p);    // inside or on the boundary
bool contains(const Ring& r, Point p);      // inside or on the boundary
bool contains(const Region& r, Segment s);  // the whole segment is inside or on the boundary
double distance(const Ring& r, Point p);    // to the area; 0 inside
double distance(const Segment& s, Point p);
double distance(const Segment& a, const Segment& b);  // 0 where they cross
// Ring and Polyline are one type, so these say in their names what they take.
double area_distance(const Ring& a, const Ring& b);           // between areas; 0 where they meet
double line_area_distance(const Polyline& a, const Ring& b);  // 0 where the line meets the area
double line_distance(const Polyline& a, const Polyline& b);   // 0 where they cross
Point nearest_on(const Segment& s, Point p);

// Corners of the rectangle that has `axis` as its middle line and the given width, counter-clockwise.
Ring rectangle_along(const Segment& axis, double width);

}  // namespace underlawn
