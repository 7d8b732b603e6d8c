// SPDX-License-Identifier: GPL-3.0-or-later
#include "plane/sight.h"

#include <algorithm>
#include <cmath>

namespace underlawn {
namespace {

constexpr double kGraze = kSamePlace;

std::size_t corners_of(const Region& region) {
  std::size_t n = 0;
  for (const Polygon& p : region) {
    n += p.outer.size();
    for (const Ring& hole : p.holes) n += hole.size();
  }
  return n;
}

bool finite(Point p) {
  return std::isfinite(p.x) && std::isfinite(p.y);
}

}  // namespace

// A leg from its start, and where an edge lies beside it.
struct Sight::Leg {
  Leg(Point a, Point b)
      : start(a), end(b), length(std::sqrt(dot(b - a, b - a))), along((1 / length) * (b - a)) {}

  double aside(Point p) const { return cross(along, p - start); }  // m to the left
  double ahead(Point p) const { return dot(along, p - start); }    // m from the start

  // Whether it passes clean through an edge at `s`: farther than kGraze from the edge at both its ends.
  bool clean_through(double s, double rise, double edge_squared) const {
    const double clear = std::min(s, length - s);
    return clear > 0 && clear * clear * rise * rise > kGraze * kGraze * edge_squared;
  }

  Point start, end;
  double length;
  Point along;
};

Sight::Sight(const Region& region)
    : grid_(
          [&] {
            std::vector<Segment> edges;
            edges.reserve(corners_of(region));
            for (const Polygon& p : region) {
              add(p.outer, edges);
              for (const Ring& hole : p.holes) add(hole, edges);
            }
            return edges;
          }(),
          kGraze) {}

void Sight::add(const Ring& ring, std::vector<Segment>& edges) {
  const std::size_t n = ring.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point at = ring[i], after = ring[(i + 1) % n], before = ring[(i + n - 1) % n];
    if (at == after) continue;
    edges.push_back({at, after});
    // Outer rings turn left and holes right, so that the region lies to the left of every edge.
    const double turn = cross(at - before, after - at);
    if (turn < 0) reflex_.push_back({at, before, after});
    if (turn > 0) convex_.push_back({at, before, after});
  }
}

bool Sight::near_boundary(Point p) const {
  return !grid_.along(p, p, [p](const Segment& e) { return distance(e, p) > kGraze; });
}

bool Sight::holds(Point p) const {
  return finite(p) && (grid_.odd(p) || near_boundary(p));
}

bool Sight::strictly_holds(Point p) const {
  return finite(p) && grid_.odd(p) && !near_boundary(p);
}

Point Sight::nearest(Point p) const {
  if (holds(p)) return p;
  Point best = p;
  double least = -1;
  for (const Segment& e : grid_.edges()) {
    const Point q = nearest_on(e, p);
    if (const double d = distance(p, q); least < 0 || d < least) {
      least = d;
      best = q;
    }
  }
  return best;
}

bool Sight::meetings(const Leg& leg, bool stop, std::vector<double>& out) const {
  return grid_.along(leg.start, leg.end, [&](const Segment& e) {
    const double l = leg.aside(e.a), r = leg.aside(e.b);
    if ((l > kGraze && r > kGraze) || (l < -kGraze && r < -kGraze)) return true;
    if (std::min(std::abs(l), std::abs(r)) > kGraze) {
      const double s = leg.ahead(e.a + (l / (l - r)) * (e.b - e.a));
      if (s < -kGraze || s > leg.length + kGraze) return true;
      if (stop && leg.clean_through(s, l - r, dot(e.b - e.a, e.b - e.a))) return false;
      out.push_back(s);
      return true;
    }
    if (std::abs(l) <= kGraze) out.push_back(leg.ahead(e.a));
    if (std::abs(r) <= kGraze) out.push_back(leg.ahead(e.b));
    return true;
  });
}

template <class Visit>
bool Sight::parts(const Leg& leg, std::vector<double>& at, Visit visit) const {
  at.push_back(0);
  at.push_back(leg.length);
  std::sort(at.begin(), at.end());
  for (std::size_t i = 1; i < at.size(); ++i) {
    const double low = std::clamp(at[i - 1], 0.0, leg.length), high = std::clamp(at[i], 0.0, leg.length);
    // Too short to tell one side of an edge from the other.
    if (high - low <= 2 * kGraze) continue;
    if (!visit(low, high, leg.start + (low + high) / 2 * leg.along)) return false;
  }
  return true;
}

bool Sight::sees(Point a, Point b) const {
  if (!finite(a) || !finite(b)) return false;
  const Leg leg(a, b);
  if (leg.length <= 2 * kGraze) return holds(a) && holds(b);
  thread_local std::vector<double> at;
  at.clear();
  if (!meetings(leg, true, at)) return false;
  return parts(leg, at, [this](double, double, Point middle) { return holds(middle); }) && holds(a) &&
         holds(b);
}

Sight::Passage Sight::passage(Point a, Point b, bool starts_inside) const {
  Passage way;
  if (!finite(a) || !finite(b) || !grid_.comes_near(a, b)) return way;
  way.ends_inside = starts_inside;
  const Leg leg(a, b);
  if (leg.length <= 2 * kGraze) return way;
  thread_local std::vector<double> at;
  at.clear();
  meetings(leg, false, at);
  parts(leg, at, [&](double low, double high, Point middle) {
    const bool in = strictly_holds(middle);
    if (in) way.inside += high - low;
    if (in && !way.ends_inside) ++way.entries;
    way.ends_inside = in;
    return true;
  });
  return way;
}

}  // namespace underlawn
