// SPDX-License-Identifier: GPL-3.0-or-later
// Distances for what is asked thousands of times while the mouse moves. Plain arithmetic on doubles: for
// trying; what is kept is proved by legality.h.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "plane/point.h"

namespace underlawn {

inline Point quick_nearest(const Segment& s, Point p) {
  const Point u = s.b - s.a;
  const double long_ = dot(u, u);
  return s.a + (long_ > 0 ? std::clamp(dot(p - s.a, u) / long_, 0.0, 1.0) : 0.0) * u;
}

inline bool quick_cross(const Segment& s, const Segment& t) {
  const double a = cross(s.b - s.a, t.a - s.a), b = cross(s.b - s.a, t.b - s.a);
  const double c = cross(t.b - t.a, s.a - t.a), d = cross(t.b - t.a, s.b - t.a);
  return a * b < 0 && c * d < 0;
}

// The shortest way between two segments: from the first to the second, m. Nought where they cross.
inline Segment quick_way(const Segment& s, const Segment& t) {
  if (quick_cross(s, t)) return {s.a, s.a};
  const Segment ways[] = {{s.a, quick_nearest(t, s.a)},
                          {s.b, quick_nearest(t, s.b)},
                          {quick_nearest(s, t.a), t.a},
                          {quick_nearest(s, t.b), t.b}};
  return *std::min_element(std::begin(ways), std::end(ways), [](const Segment& l, const Segment& r) {
    return dot(l.b - l.a, l.b - l.a) < dot(r.b - r.a, r.b - r.a);
  });
}

inline double quick_distance(const Segment& s, const Segment& t) {
  const Segment way = quick_way(s, t);
  return std::sqrt(dot(way.b - way.a, way.b - way.a));
}

// Of a ring's outline and a segment.
inline Segment quick_way(const Ring& ring, const Segment& t) {
  Segment best{};
  double least = 1e300;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const Segment way = quick_way(Segment{ring[j], ring[i]}, t);
    const double long_ = dot(way.b - way.a, way.b - way.a);
    if (long_ >= least) continue;
    least = long_;
    best = way;
  }
  return best;
}

inline bool quick_inside(const Ring& ring, Point p) {
  bool inside = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
    if ((ring[i].y > p.y) != (ring[j].y > p.y) &&
        p.x < ring[i].x + (p.y - ring[i].y) / (ring[j].y - ring[i].y) * (ring[j].x - ring[i].x))
      inside = !inside;
  return inside;
}

}  // namespace underlawn
