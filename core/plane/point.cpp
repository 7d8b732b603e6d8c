// SPDX-License-Identifier: GPL-3.0-or-later
#include "plane/point.h"

#include <cassert>
#include <cmath>

namespace underlawn {

double norm(Point a) {
  return std::hypot(a.x, a.y);
}
double distance(Point a, Point b) {
  return norm(b - a);
}

Point unit(Point a) {
  const double n = norm(a);
  assert(n > 0);
  return {a.x / n, a.y / n};
}

Point left_normal(Point a) {
  return {-a.y, a.x};
}
Point direction(double radians) {
  return {std::cos(radians), std::sin(radians)};
}

Point rotated(Point a, double radians) {
  const double c = std::cos(radians), s = std::sin(radians);
  return {c * a.x - s * a.y, s * a.x + c * a.y};
}

double length(const Polyline& line) {
  double sum = 0;
  for (std::size_t i = 1; i < line.size(); ++i) sum += distance(line[i - 1], line[i]);
  return sum;
}

}  // namespace underlawn
