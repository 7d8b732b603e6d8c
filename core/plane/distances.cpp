// SPDX-License-Identifier: GPL-3.0-or-later
// What lies in what and how far apart. Point in ring is Boost.Geometry's; the distances are plain loops over
// edges, which for the handful of edges of a trench or a house are faster than an index and decide crossings
// by sign alone.
#include <algorithm>
#include <cmath>
#include <limits>

#include "plane/boost_types.h"
#include "plane/region.h"
#include "plane/sight.h"

namespace underlawn {
namespace {

namespace bg = boost::geometry;

constexpr double kFar = std::numeric_limits<double>::infinity();
constexpr double kLevel = 1e-9;  // m, what rounding puts a point on a slanting edge beside it

template <class DistanceToEdge>
double least_over_edges(const Ring& ring, DistanceToEdge to) {
  double least = kFar;
  const std::size_t n = ring.size();
  for (std::size_t i = 0; i < n; ++i)
    least = std::min(least, to(Segment{ring[i], ring[i + 1 < n ? i + 1 : 0]}));
  return least;
}

double to_boundary(const Ring& ring, Point p) {
  return least_over_edges(ring, [p](const Segment& s) { return distance(s, p); });
}

// The layout asks for distances by the million, and a root costs more than all the rest.
double squared(const Segment& s, Point p) {
  const Point off = p - nearest_on(s, p);
  return dot(off, off);
}

bool opposite(double l, double r) {
  return (l > 0 && r < 0) || (l < 0 && r > 0);
}

bool cross_each_other(const Segment& s, const Segment& t) {
  const Point u = s.b - s.a, v = t.b - t.a;
  return opposite(cross(u, t.a - s.a), cross(u, t.b - s.a)) &&
         opposite(cross(v, s.a - t.a), cross(v, s.b - t.a));
}

bool reaches(const Polygon& polygon, Point p) {
  if (!bg::covered_by(p, polygon.outer) && to_boundary(polygon.outer, p) > kGrid) return false;
  return std::none_of(polygon.holes.begin(), polygon.holes.end(), [p](const Ring& hole) {
    return bg::covered_by(p, hole) && to_boundary(hole, p) > kGrid;
  });
}

}  // namespace

bool contains(const Ring& r, Point p) {
  if (r.size() < 3 || !std::isfinite(p.x) || !std::isfinite(p.y)) return false;
  return bg::covered_by(p, r) || to_boundary(r, p) <= kLevel;
}

bool contains(const Region& r, Point p) {
  if (!std::isfinite(p.x) || !std::isfinite(p.y)) return false;
  return std::any_of(r.begin(), r.end(), [p](const Polygon& polygon) { return reaches(polygon, p); });
}

bool contains(const Region& r, Segment s) {
  return Sight(r).sees(s.a, s.b);
}

Point nearest_on(const Segment& s, Point p) {
  const Point along = s.b - s.a;
  const double squared = dot(along, along);
  return squared > 0 ? s.a + std::clamp(dot(p - s.a, along) / squared, 0.0, 1.0) * along : s.a;
}

double distance(const Segment& s, Point p) {
  return std::sqrt(squared(s, p));
}

double distance(const Segment& a, const Segment& b) {
  if (cross_each_other(a, b)) return 0;
  return std::sqrt(std::min({squared(a, b.a), squared(a, b.b), squared(b, a.a), squared(b, a.b)}));
}

double distance(const Ring& r, Point p) {
  return contains(r, p) ? 0 : to_boundary(r, p);
}

double line_area_distance(const Polyline& a, const Ring& b) {
  if (a.empty() || b.empty()) return kFar;
  double least = distance(b, a.front());
  for (std::size_t i = 1; i < a.size() && least > 0; ++i) {
    const Segment leg{a[i - 1], a[i]};
    least = std::min(least, least_over_edges(b, [&](const Segment& s) { return distance(s, leg); }));
  }
  return least;
}

double area_distance(const Ring& a, const Ring& b) {
  if (a.empty() || b.empty()) return kFar;
  if (contains(a, b.front()) || contains(b, a.front())) return 0;
  return least_over_edges(a, [&](const Segment& s) {
    return least_over_edges(b, [&](const Segment& t) { return distance(s, t); });
  });
}

double line_distance(const Polyline& a, const Polyline& b) {
  if (a.size() == 1 && b.size() == 1) return distance(a.front(), b.front());
  if (a.size() == 1) return line_distance({a.front(), a.front()}, b);
  if (b.size() == 1) return line_distance(a, {b.front(), b.front()});
  double least = kFar;
  for (std::size_t i = 1; i < a.size(); ++i)
    for (std::size_t j = 1; j < b.size(); ++j)
      least = std::min(least, distance(Segment{a[i - 1], a[i]}, Segment{b[j - 1], b[j]}));
  return least;
}

}  // namespace underlawn
