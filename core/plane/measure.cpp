// SPDX-License-Identifier: GPL-3.0-or-later
// Areas, distances and what contains what.
#include <algorithm>
#include <cmath>

#include "plane/boost_types.h"
#include "plane/region.h"
#include "plane/sight.h"

namespace underlawn {
namespace {

Box over(const Ring& r, Box b) {
  for (Point p : r) {
    b.low = {std::min(b.low.x, p.x), std::min(b.low.y, p.y)};
    b.high = {std::max(b.high.x, p.x), std::max(b.high.y, p.y)};
  }
  return b;
}

// Whether the two cross at a place inside both.
bool cross_properly(const Segment& a, const Segment& b) {
  const double c1 = cross(a.b - a.a, b.a - a.a), c2 = cross(a.b - a.a, b.b - a.a);
  const double c3 = cross(b.b - b.a, a.a - b.a), c4 = cross(b.b - b.a, a.b - b.a);
  return ((c1 > 0 && c2 < 0) || (c1 < 0 && c2 > 0)) && ((c3 > 0 && c4 < 0) || (c3 < 0 && c4 > 0));
}

template <class Measure>
double least_over_edges(const Ring& r, Measure measure) {
  double least = 1e300;
  for (std::size_t i = 0; i < r.size(); ++i)
    least = std::min(least, measure(Segment{r[i], r[(i + 1) % r.size()]}));
  return least;
}

}  // namespace

double area(const Ring& ring) {
  return ring.size() < 3 ? 0 : std::abs(bg::area(boost_ring(ring)));
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
  return ring.size() < 2 ? 0 : bg::perimeter(boost_ring(ring));
}

Point centroid(const Ring& ring) {
  Point c;
  bg::centroid(boost_ring(ring), c);
  return c;
}

Box bounds(const Ring& r) {
  const Point first = r.empty() ? Point{} : r.front();
  return over(r, {first, first});
}

Box bounds(const Region& r) {
  if (r.empty()) return {};
  Box b = bounds(r.front().outer);
  for (const Polygon& p : r) b = over(p.outer, b);
  return b;
}

bool contains(const Ring& r, Point p) {
  return r.size() > 2 && bg::covered_by(p, boost_ring(r));
}

bool contains(const Region& r, Point p) {
  for (const Polygon& g : r) {
    if (!contains(g.outer, p)) continue;
    const bool in_hole = std::any_of(g.holes.begin(), g.holes.end(), [&](const Ring& h) {
      return bg::within(p, boost_ring(Ring(h.rbegin(), h.rend())));
    });
    if (!in_hole) return true;
  }
  return false;
}

bool contains(const Region& r, Segment s) {
  return Sight(r).sees(s.a, s.b);
}

Point nearest_on(const Segment& s, Point p) {
  const Point d = s.b - s.a;
  const double n = dot(d, d);
  return n > 0 ? s.a + std::clamp(dot(p - s.a, d) / n, 0.0, 1.0) * d : s.a;
}

double distance(const Segment& s, Point p) {
  return distance(nearest_on(s, p), p);
}

double distance(const Segment& a, const Segment& b) {
  if (cross_properly(a, b)) return 0;
  return std::min({distance(a, b.a), distance(a, b.b), distance(b, a.a), distance(b, a.b)});
}

double distance(const Ring& r, Point p) {
  return contains(r, p) ? 0 : least_over_edges(r, [&](Segment s) { return distance(s, p); });
}

double line_area_distance(const Polyline& a, const Ring& b) {
  double least = distance(b, a.front());
  for (std::size_t i = 1; i < a.size() && least > 0; ++i)
    least = std::min(least, least_over_edges(b, [&](Segment s) {
                       return distance(s, Segment{a[i - 1], a[i]});
                     }));
  return least;
}

double area_distance(const Ring& a, const Ring& b) {
  if (contains(a, b.front()) || contains(b, a.front())) return 0;
  return least_over_edges(a, [&](Segment s) { return line_area_distance({s.a, s.b}, b); });
}

double line_distance(const Polyline& a, const Polyline& b) {
  double least = 1e300;
  for (std::size_t i = 1; i < a.size(); ++i)
    for (std::size_t j = 1; j < b.size(); ++j)
      least = std::min(least, distance(Segment{a[i - 1], a[i]}, Segment{b[j - 1], b[j]}));
  return least;
}

Ring rectangle_along(const Segment& axis, double width) {
  const Point n = width / 2 * left_normal(unit(axis.b - axis.a));
  return {axis.a - n, axis.b - n, axis.b + n, axis.a + n};
}

}  // namespace underlawn
