// SPDX-License-Identifier: GPL-3.0-or-later
// Lines that have a width.
#pragma once

#include "plane/point.h"

namespace underlawn {

// The outline of a strip with the line as its middle: ends square, corners mitred, but cut off where the line
// turns by more than kMitredTurn. Counter-clockwise; of a line of two points its rectangle_along. Where the
// line is so crooked that the strip overlaps itself, its outer edge. Of what is no place, or beyond 90 km,
// the rectangle from end to end.
Ring strip_along(const Polyline& line, double width);
inline constexpr double kMitredTurn =
    2.0944;  // rad: a third of a full turn, the corner then 2 half widths out

// Corner of the left edge of such a strip, from the line's own: `before` and `after` are the directions of
// the legs, which do not turn right round. Negative `half`: of the right edge.
Point mitre(Point before, Point after, double half);

// Without its first and last stretches of so many metres; negative ones make it longer. The first and last
// leg keep at least their direction.
Polyline trimmed(const Polyline& line, double at_start, double at_end);

// Repeated points and points of straight going dropped, first and last kept.
Polyline without_idle_points(const Polyline& line);

// The point of the line nearest its start that is so many metres along it, and the leg it lies on (from 0).
struct PlaceAlong {
  std::size_t leg = 0;
  Point at;
};
PlaceAlong place_along(const Polyline& line, double metres);

// Angle by which the line turns at its point `which`, rad, 0..pi.
double turn_at(const Polyline& line, std::size_t which);

}  // namespace underlawn
