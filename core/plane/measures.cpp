// SPDX-License-Identifier: GPL-3.0-or-later
// Areas, lengths, middles and extents, by Boost.Geometry.
#include <algorithm>
#include <cmath>

#include "plane/boost_types.h"
#include "plane/region.h"

namespace underlawn {

namespace bg = boost::geometry;

double area(const Ring& ring) {
  return std::abs(bg::area(ring));
}

double area(const Region& r) {
  double sum = 0;
  for (const Polygon& p : r) {
    sum += area(p.outer);
    for (const Ring& hole : p.holes) sum -= area(hole);
  }
  return sum;
}

double perimeter(const Ring& ring) {
  return bg::perimeter(ring);
}

Point centroid(const Ring& ring) {
  if (ring.empty()) return {};
  // Boost divides by the area; where that is nothing, the middle of the extent will do.
  if (area(ring) <= kGrid * perimeter(ring)) return 0.5 * (bounds(ring).low + bounds(ring).high);
  return bg::return_centroid<Point>(ring);
}

Box bounds(const Ring& ring) {
  if (ring.empty()) return {};
  Box box{ring.front(), ring.front()};
  for (Point p : ring) bg::expand(box, p);
  return box;
}

Box bounds(const Region& r) {
  if (r.empty()) return {};
  Box box = bounds(r.front().outer);
  for (const Polygon& p : r) bg::expand(box, bounds(p.outer));
  return box;
}

Ring rectangle_along(const Segment& axis, double width) {
  const Point along = axis.b - axis.a;
  const double long_ = norm(along);
  const Point aside = width / 2 * (long_ > 0 ? left_normal((1 / long_) * along) : Point{0, 1});
  return {axis.a - aside, axis.b - aside, axis.b + aside, axis.a + aside};
}

}  // namespace underlawn
