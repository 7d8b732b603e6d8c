// SPDX-License-Identifier: GPL-3.0-or-later
// A first, plain form of the plane's operations, so that the rooms above can be joined. To be replaced.
#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/register/point.hpp>
#include <cmath>
#include <numbers>
#include <polyclipping/clipper.hpp>

#include "plane/region.h"

BOOST_GEOMETRY_REGISTER_POINT_2D(underlawn::Point, double, boost::geometry::cs::cartesian, x, y)

namespace underlawn {
namespace {

namespace cl = ClipperLib;
using cl::Path;
using cl::Paths;

Path path_of(const Ring& ring) {
  Path out;
  for (Point p : ring)
    out.push_back(
        {static_cast<cl::cInt>(std::llround(p.x / kGrid)), static_cast<cl::cInt>(std::llround(p.y / kGrid))});
  return out;
}
Ring ring_of(const Path& path) {
  Ring out;
  for (const auto& p : path) out.push_back({p.X * kGrid, p.Y * kGrid});
  return out;
}
Paths paths_of(const Region& r) {
  Paths out;
  for (const Polygon& p : r) {
    out.push_back(path_of(p.outer));
    if (!cl::Orientation(out.back())) cl::ReversePath(out.back());
    for (const Ring& h : p.holes) {
      out.push_back(path_of(h));
      if (cl::Orientation(out.back())) cl::ReversePath(out.back());
    }
  }
  return out;
}
void collect(const cl::PolyNode& node, Region& out) {
  for (const cl::PolyNode* outer : node.Childs) {
    Polygon polygon{ring_of(outer->Contour), {}};
    for (const cl::PolyNode* hole : outer->Childs) {
      polygon.holes.push_back(ring_of(hole->Contour));
      collect(*hole, out);
    }
    out.push_back(polygon);
  }
}
Region run(cl::ClipType type, const Paths& a, const Paths& b) {
  cl::Clipper c(cl::ioStrictlySimple);
  c.AddPaths(a, cl::ptSubject, true);
  if (!b.empty()) c.AddPaths(b, cl::ptClip, true);
  cl::PolyTree tree;
  c.Execute(type, tree, cl::pftNonZero, cl::pftNonZero);
  Region out;
  collect(tree, out);
  return out;
}
constexpr double kArc = 0.01;  // of the offset
Region offset(const Paths& paths, cl::EndType end, double by) {
  // A chord's sagitta is kArc of the radius; the radius grown by that keeps the chord outside the true
  // circle.
  const double reach = std::abs(by) / (1 - kArc / 2), arc = reach / kGrid * kArc / 2;
  cl::ClipperOffset o(2, std::max(arc, 0.25));
  o.AddPaths(paths, cl::jtRound, end);
  cl::PolyTree tree;
  o.Execute(tree, std::copysign(reach, by) / kGrid);
  Region out;
  collect(tree, out);
  return out;
}
double signed_area(const Ring& r) {
  double s = 0;
  for (std::size_t i = 0; i < r.size(); ++i) s += cross(r[i], r[(i + 1) % r.size()]);
  return s / 2;
}
template <class F>
double least_edge(const Ring& r, F f) {
  double d = 1e300;
  for (std::size_t i = 0; i < r.size(); ++i) d = std::min(d, f(Segment{r[i], r[(i + 1) % r.size()]}));
  return d;
}
bool cross_at(const Segment& a, const Segment& b) {
  const double c1 = cross(a.b - a.a, b.a - a.a), c2 = cross(a.b - a.a, b.b - a.a);
  const double c3 = cross(b.b - b.a, a.a - b.a), c4 = cross(b.b - b.a, a.b - b.a);
  return ((c1 > 0 && c2 < 0) || (c1 < 0 && c2 > 0)) && ((c3 > 0 && c4 < 0) || (c3 < 0 && c4 > 0));
}
Box over(const Ring& r, Box b) {
  for (Point p : r) {
    b.low = {std::min(b.low.x, p.x), std::min(b.low.y, p.y)};
    b.high = {std::max(b.high.x, p.x), std::max(b.high.y, p.y)};
  }
  return b;
}

}  // namespace

Result<Ring> checked_ring(const Ring& drawn, std::string_view name) {
  const std::string thing(name);
  if (drawn.size() > kMostRingPoints)
    return refuse({"ring_too_many_points", thing, std::to_string(drawn.size()) + " points",
                   "at most 20000 points", "Simplify the outline."});
  Ring ring;
  for (Point p : drawn) {
    if (!std::isfinite(p.x) || !std::isfinite(p.y) || std::abs(p.x) > kLargestPlan ||
        std::abs(p.y) > kLargestPlan)
      return refuse({"ring_out_of_reach", thing, "a corner that is no place on the plan", "within 10 km",
                     "Move or delete the corner."});
    if (ring.empty() || distance(ring.back(), p) > kSamePlace) ring.push_back(p);
  }
  while (ring.size() > 1 && distance(ring.front(), ring.back()) <= kSamePlace) ring.pop_back();
  if (ring.size() < 3)
    return refuse({"ring_too_few_points", thing, std::to_string(ring.size()) + " corners",
                   "at least 3 corners", "Draw more corners."});
  for (std::size_t i = 0; i < ring.size(); ++i)
    for (std::size_t j = i + 2; j < ring.size(); ++j)
      if (cross_at({ring[i], ring[i + 1]}, {ring[j], ring[(j + 1) % ring.size()]}))
        return refuse({"ring_crosses_itself", thing, "crosses itself",
                       "an outline that does not cross itself", "Move a corner."});
  if (std::abs(signed_area(ring)) < 1e-6)
    return refuse({"ring_no_area", thing, "0 m2", "an area", "Draw corners that are not in one line."});
  if (signed_area(ring) < 0) std::reverse(ring.begin(), ring.end());
  return ring;
}

Region region_of(const Ring& ring) {
  Path p = path_of(ring);
  if (!cl::Orientation(p)) cl::ReversePath(p);
  return run(cl::ctUnion, {p}, {});
}
Region unite(const std::vector<Region>& parts) {
  Paths all;
  for (const Region& r : parts)
    for (const Path& p : paths_of(r)) all.push_back(p);
  return run(cl::ctUnion, all, {});
}
Region subtract(const Region& from, const Region& what) {
  return run(cl::ctDifference, paths_of(from), paths_of(what));
}
Region intersect(const Region& a, const Region& b) {
  return run(cl::ctIntersection, paths_of(a), paths_of(b));
}
Region grown(const Region& r, double by) {
  return by == 0 ? r : offset(paths_of(r), cl::etClosedPolygon, by);
}
Region buffered(const Polyline& line, double by) {
  return offset({path_of(line)}, cl::etOpenRound, by);
}
Region buffered(Point centre, double by) {
  return offset({path_of({centre})}, cl::etOpenRound, by);
}

double area(const Ring& ring) {
  return std::abs(signed_area(ring));
}
double area(const Region& r) {
  double s = 0;
  for (const Polygon& p : r) {
    s += area(p.outer);
    for (const Ring& h : p.holes) s -= area(h);
  }
  return s;
}
double perimeter(const Ring& ring) {
  double s = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) s += distance(ring[i], ring[(i + 1) % ring.size()]);
  return s;
}
Point centroid(const Ring& r) {
  Point sum;
  for (std::size_t i = 0; i < r.size(); ++i) {
    const Point a = r[i] - r[0], b = r[(i + 1) % r.size()] - r[0];
    sum = sum + cross(a, b) * (a + b);
  }
  return r[0] + (1 / (6 * signed_area(r))) * sum;
}
Box bounds(const Ring& r) {
  return over(r, {r.empty() ? Point{} : r[0], r.empty() ? Point{} : r[0]});
}
Box bounds(const Region& r) {
  if (r.empty()) return {};
  Box b = bounds(r[0].outer);
  for (const Polygon& p : r) b = over(p.outer, b);
  return b;
}

bool contains(const Ring& r, Point p) {
  bool in = false;
  for (std::size_t i = 0, j = r.size() - 1; i < r.size(); j = i++) {
    if (distance(Segment{r[j], r[i]}, p) <= 1e-9) return true;
    if ((r[i].y > p.y) != (r[j].y > p.y) &&
        p.x < (r[j].x - r[i].x) * (p.y - r[i].y) / (r[j].y - r[i].y) + r[i].x)
      in = !in;
  }
  return in;
}
bool contains(const Region& r, Point p) {
  for (const Polygon& g : r) {
    if (!contains(g.outer, p)) continue;
    bool out = false;
    for (const Ring& h : g.holes)
      out |= contains(h, p) && least_edge(h, [&](Segment s) { return distance(s, p); }) > 1e-9;
    if (!out) return true;
  }
  return false;
}
bool contains(const Region& r, Segment s) {
  // Cut the segment where it meets edges and look at the middle of each part.
  std::vector<double> cuts = {0, 1};
  const Point d = s.b - s.a;
  const auto cut = [&](const Ring& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Point a = ring[i], e = ring[(i + 1) % ring.size()] - a;
      const double den = cross(d, e);
      if (std::abs(den) < 1e-15) continue;
      const double t = cross(a - s.a, e) / den, u = cross(a - s.a, d) / den;
      if (t > 0 && t < 1 && u >= -1e-12 && u <= 1 + 1e-12) cuts.push_back(t);
    }
  };
  for (const Polygon& p : r) {
    cut(p.outer);
    for (const Ring& h : p.holes) cut(h);
  }
  std::sort(cuts.begin(), cuts.end());
  for (std::size_t i = 1; i < cuts.size(); ++i) {
    if ((cuts[i] - cuts[i - 1]) * norm(d) < kSamePlace) continue;
    if (!contains(r, s.a + (cuts[i] + cuts[i - 1]) / 2 * d)) return false;
  }
  return contains(r, s.a) && contains(r, s.b);
}

Point nearest_on(const Segment& s, Point p) {
  const Point d = s.b - s.a;
  const double n = dot(d, d);
  const double t = n > 0 ? std::clamp(dot(p - s.a, d) / n, 0.0, 1.0) : 0;
  return s.a + t * d;
}
double distance(const Segment& s, Point p) {
  return distance(nearest_on(s, p), p);
}
double distance(const Segment& a, const Segment& b) {
  if (cross_at(a, b)) return 0;
  return std::min({distance(a, b.a), distance(a, b.b), distance(b, a.a), distance(b, a.b)});
}
double distance(const Ring& r, Point p) {
  return contains(r, p) ? 0 : least_edge(r, [&](Segment s) { return distance(s, p); });
}
double line_area_distance(const Polyline& a, const Ring& b) {
  double d = distance(b, a.front());
  for (std::size_t i = 1; i < a.size(); ++i)
    d = std::min(d, least_edge(b, [&](Segment s) { return distance(s, Segment{a[i - 1], a[i]}); }));
  return d;
}
double area_distance(const Ring& a, const Ring& b) {
  if (contains(a, b[0]) || contains(b, a[0])) return 0;
  return least_edge(a, [&](Segment s) { return line_area_distance({s.a, s.b}, b); });
}
double line_distance(const Polyline& a, const Polyline& b) {
  double d = 1e300;
  for (std::size_t i = 1; i < a.size(); ++i)
    for (std::size_t j = 1; j < b.size(); ++j)
      d = std::min(d, distance(Segment{a[i - 1], a[i]}, Segment{b[j - 1], b[j]}));
  return d;
}
Ring rectangle_along(const Segment& axis, double width) {
  const Point n = width / 2 * left_normal(unit(axis.b - axis.a));
  return {axis.a - n, axis.b - n, axis.b + n, axis.a + n};
}

}  // namespace underlawn
