// SPDX-License-Identifier: GPL-3.0-or-later
#include "plane/parallel.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "plane/region.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

// The places of one corner on the parallel: one where it is mitred, two where it is cut off.
void add_corner(Ring& out, Point at, Point before, Point after, double left) {
  const double turn = std::abs(std::atan2(cross(before, after), dot(before, after)));
  const bool outside = cross(before, after) * left < 0;
  if (turn <= kMitredTurn || !outside) {
    if (dot(before, after) > -0.999) out.push_back(at + mitre(before, after, left));
    return;
  }
  out.push_back(at + left * left_normal(before));
  out.push_back(at + left * left_normal(after));
}

Ring mitred_ring(const Ring& ring, double out) {
  Ring moved;
  const std::size_t n = ring.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point before = unit(ring[i] - ring[(i + n - 1) % n]), after = unit(ring[(i + 1) % n] - ring[i]);
    add_corner(moved, ring[i], before, after, -out);
  }
  return moved;
}

// Whether every side of `moved` keeps the distance, so that no fold is left in it.
bool keeps_off(const Ring& ring, const Ring& moved, double by) {
  for (std::size_t i = 0; i < moved.size(); ++i)
    for (std::size_t j = 0; j < ring.size(); ++j)
      if (distance(Segment{moved[i], moved[(i + 1) % moved.size()]},
                   Segment{ring[j], ring[(j + 1) % ring.size()]}) < by - 1e-6)
        return false;
  return true;
}

Ring largest(const Region& region) {
  const auto at = std::max_element(region.begin(), region.end(), [](const Polygon& a, const Polygon& b) {
    return area(a.outer) < area(b.outer);
  });
  return at == region.end() ? Ring{} : at->outer;
}

// Where the line through `p` along `way` meets the line through a and b; none where they run alike.
std::optional<Point> meeting(Point p, Point way, Point a, Point b) {
  const double across = cross(way, b - a);
  if (std::abs(across) < 1e-9 * norm(b - a)) return std::nullopt;
  return p + (cross(a - p, b - a) / across) * way;
}

}  // namespace

Polyline parallel_line(const Polyline& drawn, double left) {
  if (drawn.size() < 2) return {};
  const Polyline line = without_idle_points(drawn);
  if (distance(line[0], line[1]) < kSamePlace) return {};
  Polyline moved = {line[0] + left * left_normal(unit(line[1] - line[0]))};
  for (std::size_t i = 1; i + 1 < line.size(); ++i)
    add_corner(moved, line[i], unit(line[i] - line[i - 1]), unit(line[i + 1] - line[i]), left);
  const std::size_t n = line.size();
  moved.push_back(line[n - 1] + left * left_normal(unit(line[n - 1] - line[n - 2])));
  return moved;
}

Ring parallel_ring(const Ring& drawn, double out) {
  const auto ring = checked_ring(drawn, "outline");
  if (!ring || !std::isfinite(out)) return {};
  const Ring moved = mitred_ring(*ring, out);
  const auto checked = checked_ring(moved, "outline");
  const bool sound = checked && moved.size() >= 3 && keeps_off(*ring, *checked, std::abs(out)) &&
                     (out > 0) == (area(*checked) > area(*ring));
  return sound ? *checked : largest(grown(region_of(*ring), out));
}

Ring strip_inside(const Ring& drawn, std::size_t i, double wide) {
  const std::size_t n = drawn.size();
  if (i >= n || n < 3 || !(wide > 0)) return {};
  const Point a = drawn[i], b = drawn[(i + 1) % n], before = drawn[(i + n - 1) % n],
              after = drawn[(i + 2) % n];
  if (distance(a, b) < kSamePlace) return {};
  double twice_area = 0;
  for (std::size_t k = 0; k < n; ++k) twice_area += cross(drawn[k], drawn[(k + 1) % n]);
  const Point way = unit(b - a), in = (twice_area > 0 ? wide : -wide) * left_normal(way);
  const auto near = meeting(a + in, way, a, before), far = meeting(b + in, way, b, after);
  const auto usable = [&](const std::optional<Point>& p, Point corner) {
    return p && distance(*p, corner) < 4 * wide && dot(*p - corner, in) > 0;
  };
  Ring strip = {a, b, usable(far, b) ? *far : b + in, usable(near, a) ? *near : a + in};
  if (dot(strip[2] - strip[3], way) <= kSamePlace) return {};
  const auto lot = checked_ring(drawn, "outline");
  if (!lot) return {};
  const double outside = area(subtract(region_of(strip), region_of(*lot)));
  return outside > 0.01 * area(strip) ? largest(intersect(region_of(strip), region_of(*lot))) : strip;
}

}  // namespace underlawn
