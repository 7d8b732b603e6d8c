// SPDX-License-Identifier: GPL-3.0-or-later
// Chords that stand for arcs. A chord over the angle t of radius r lies r(1 - cos(t/2)) off its arc.
#pragma once

#include "plane/point.h"

namespace underlawn {

// Angle of the longest chord that stays within `tolerance` of its arc, rad; from a tenth of a degree to a
// quarter turn.
double chord_angle(double radius, double tolerance);

// Points of the arc behind its first one, with the last; `sweep` rad counter-clockwise, negative clockwise.
Polyline arc_points(Point centre, double radius, double start, double sweep, double tolerance);

// The same for one side of a polyline: bulge is the tangent of a quarter of the arc's angle, positive to the
// left (DXF Reference, LWPOLYLINE, group code 42). Points behind `a`, with `b`.
Polyline bulge_points(Point a, Point b, double bulge, double tolerance);

// A line that holds finely chorded arcs (equal steps, equal turns) with as few of their points as stay within
// `tolerance`. Everything else keeps every point.
Polyline with_fewer_chords(const Polyline& line, double tolerance);

}  // namespace underlawn
