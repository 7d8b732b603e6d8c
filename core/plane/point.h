// SPDX-License-Identifier: GPL-3.0-or-later
// The plane of the lot: metres, x to the right and y up in the drawing. North is an angle of the site, not of
// the plane, so a drawing can be made square to the street.
//
//        y ^        directions are radians counter-clockwise from +x;
//          |        bearings (base of deed calls) are clockwise from north.
//          +--> x
#pragma once

#include <vector>

namespace underlawn {

struct Point {
  double x = 0;  // m
  double y = 0;  // m
  bool operator==(const Point&) const = default;
};

inline Point operator+(Point a, Point b) {
  return {a.x + b.x, a.y + b.y};
}
inline Point operator-(Point a, Point b) {
  return {a.x - b.x, a.y - b.y};
}
inline Point operator*(double s, Point a) {
  return {s * a.x, s * a.y};
}
inline double dot(Point a, Point b) {
  return a.x * b.x + a.y * b.y;
}
inline double cross(Point a, Point b) {
  return a.x * b.y - a.y * b.x;
}
double norm(Point a);
double distance(Point a, Point b);
Point unit(Point a);                     // a must not be zero
Point left_normal(Point a);              // a turned a quarter counter-clockwise
Point direction(double radians);         // unit vector
Point rotated(Point a, double radians);  // about the origin, counter-clockwise

using Polyline = std::vector<Point>;  // open, at least two points
using Ring = std::vector<Point>;      // closed by implication: the last point is not the first again

struct Segment {
  Point a, b;
  bool operator==(const Segment&) const = default;
};

struct Box {
  Point low, high;
  bool operator==(const Box&) const = default;
};

double length(const Polyline& line);

// Two lengths closer than this are the same length on the ground: a tenth of a millimetre.
inline constexpr double kSamePlace = 1e-4;  // m

}  // namespace underlawn
