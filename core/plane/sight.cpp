// SPDX-License-Identifier: GPL-3.0-or-later
#include "plane/sight.h"

#include <algorithm>
#include <cmath>

namespace underlawn {

Sight::Sight(const Region& region) {
  for (const Polygon& p : region) {
    add(p.outer);
    for (const Ring& hole : p.holes) add(hole);
  }
}

void Sight::add(const Ring& ring) {
  const std::size_t n = ring.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point a = ring[i], b = ring[(i + 1) % n], before = ring[(i + n - 1) % n];
    edges_.push_back({a, b, std::min(a.x, b.x) - kGraze, std::min(a.y, b.y) - kGraze,
                      std::max(a.x, b.x) + kGraze, std::max(a.y, b.y) + kGraze});
    corners_.push_back({a, before, b});
    // Outer rings turn left and holes turn right, so the region lies to the left of every edge.
    if (cross(a - before, b - a) < 0) bending_.push_back(corners_.back());
  }
}

bool Sight::parity(Point p) const {
  bool in = false;
  for (const Edge& e : edges_)
    if ((e.a.y > p.y) != (e.b.y > p.y) && p.x < (e.b.x - e.a.x) * (p.y - e.a.y) / (e.b.y - e.a.y) + e.a.x)
      in = !in;
  return in;
}

bool Sight::near_boundary(Point p) const {
  for (const Edge& e : edges_) {
    if (p.x < e.low_x || p.x > e.high_x || p.y < e.low_y || p.y > e.high_y) continue;
    if (distance(Segment{e.a, e.b}, p) <= kGraze) return true;
  }
  return false;
}

bool Sight::holds(Point p) const {
  return parity(p) || near_boundary(p);
}

bool Sight::cuts(Point a, Point b, bool stop, std::vector<double>& out) const {
  const Point d = b - a;
  const double length = norm(d);
  const Point u{d.x / length, d.y / length};
  const double low_x = std::min(a.x, b.x), high_x = std::max(a.x, b.x);
  const double low_y = std::min(a.y, b.y), high_y = std::max(a.y, b.y);
  for (const Edge& e : edges_) {
    if (e.high_x < low_x || e.low_x > high_x || e.high_y < low_y || e.low_y > high_y) continue;
    const double sa = cross(u, e.a - a), sb = cross(u, e.b - a);  // m to the left of the leg
    if ((sa > kGraze && sb > kGraze) || (sa < -kGraze && sb < -kGraze)) continue;
    const bool through = (sa > kGraze && sb < -kGraze) || (sa < -kGraze && sb > kGraze);
    if (through) {
      const Point on = e.a + (sa / (sa - sb)) * (e.b - e.a);
      const double s = dot(on - a, u);
      if (s < -kGraze || s > length + kGraze) continue;
      // Crossed in the open, well away from both ends of the leg: no way through.
      if (stop && s > kGraze && s < length - kGraze) {
        const double skew = std::abs(sa - sb) / distance(e.a, e.b);  // sine of the angle between them
        if (s * skew > kGraze && (length - s) * skew > kGraze) return false;
      }
      out.push_back(s / length);
      continue;
    }
    for (const Point& end : {e.a, e.b})
      if (std::abs(cross(u, end - a)) <= kGraze) out.push_back(dot(end - a, u) / length);
  }
  return true;
}

bool Sight::sees(Point a, Point b) const {
  const double length = distance(a, b);
  if (length <= kGraze) return holds(a);
  thread_local std::vector<double> at;
  at.assign({0.0, 1.0});
  if (!cuts(a, b, true, at)) return false;
  std::sort(at.begin(), at.end());
  for (std::size_t i = 1; i < at.size(); ++i) {
    const double low = std::clamp(at[i - 1], 0.0, 1.0), high = std::clamp(at[i], 0.0, 1.0);
    if ((high - low) * length <= 2 * kGraze) continue;
    if (!holds(a + (low + high) / 2 * (b - a))) return false;
  }
  return true;
}

Sight::Passage Sight::passage(Point a, Point b, bool inside) const {
  Passage out;
  out.ends_inside = inside;
  const double length = distance(a, b);
  if (length <= kGraze) return out;
  thread_local std::vector<double> at;
  at.assign({0.0, 1.0});
  cuts(a, b, false, at);
  std::sort(at.begin(), at.end());
  for (std::size_t i = 1; i < at.size(); ++i) {
    const double low = std::clamp(at[i - 1], 0.0, 1.0), high = std::clamp(at[i], 0.0, 1.0);
    if ((high - low) * length <= 2 * kGraze) continue;
    const bool in = parity(a + (low + high) / 2 * (b - a));
    if (in) out.inside += (high - low) * length;
    out.entries += in && !out.ends_inside;
    out.ends_inside = in;
  }
  return out;
}

}  // namespace underlawn
