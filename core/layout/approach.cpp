// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/arrangement.h"
#include "layout/cuts.h"

namespace underlawn {

namespace {

constexpr double kFar = 1e6;  // m; a header that no straight line round the house reaches
constexpr std::size_t kMostHouseCorners = 40;

// Without the care for overflow of the library's, which costs more than all else here.
double way_between(Point a, Point b) {
  const Point d = b - a;
  return std::sqrt(dot(d, d));
}

bool properly_cross(const Segment& s, const Segment& t) {
  const double a = cross(s.b - s.a, t.a - s.a), b = cross(s.b - s.a, t.b - s.a);
  if (!(a * b < 0)) return false;
  const double c = cross(t.b - t.a, s.a - t.a), d = cross(t.b - t.a, s.b - t.a);
  return c * d < 0;
}

Point nearest_point(const Segment& s, Point p) {
  const Point u = s.b - s.a;
  const double long_ = dot(u, u);
  const double share = long_ > 0 ? std::clamp(dot(p - s.a, u) / long_, 0.0, 1.0) : 0;
  return s.a + share * u;
}

// The corners pushed out along their bisectors, so that a line may pass there.
std::vector<Point> passing_corners(const Ring& house, double clear) {
  std::vector<Point> out;
  const double turn = [&] {
    double twice = 0;
    for (std::size_t i = 0; i < house.size(); ++i) twice += cross(house[i], house[(i + 1) % house.size()]);
    return twice < 0 ? -1.0 : 1.0;
  }();
  for (std::size_t i = 0; i < house.size() && out.size() < kMostHouseCorners; ++i) {
    const Point before = house[(i + house.size() - 1) % house.size()], after = house[(i + 1) % house.size()];
    if (distance(before, house[i]) < kSamePlace || distance(after, house[i]) < kSamePlace) continue;
    const Point u = unit(house[i] - before), v = unit(after - house[i]);
    if (turn * cross(u, v) > 0) out.push_back(house[i] + clear * (u - v));
  }
  return out;
}

}  // namespace

Approach::Approach(const Site& site, double clear) {
  if (!site.entry) return;
  for (const Feature& f : site.features)
    if (f.kind == FeatureKind::house && f.points.size() > 2) houses_.push_back(f.points);
  const Point entry = site.entry->at;
  const Feature* house = find_feature(site, site.entry->house_id);
  Point outside = entry;
  if (house != nullptr && house->points.size() > 2) {
    double least = kFar;
    for (std::size_t i = 0; i < house->points.size(); ++i) {
      const Segment wall{house->points[i], house->points[(i + 1) % house->points.size()]};
      const double away = distance(nearest_point(wall, entry), entry);
      if (away >= least || distance(wall.a, wall.b) < kSamePlace) continue;
      least = away;
      const Point n = left_normal(unit(wall.b - wall.a));
      const Point foot = nearest_point(wall, entry);
      outside = contains(house->points, foot + 0.05 * n) ? foot - clear * n : foot + clear * n;
    }
  }
  waypoints_.push_back({outside, distance(entry, outside)});
  std::vector<Waypoint> corners;
  for (const Ring& ring : houses_)
    for (Point p : passing_corners(ring, clear)) corners.push_back({p, kFar});
  // Few corners: relax until nothing changes.
  for (bool changed = true; changed;) {
    changed = false;
    for (Waypoint& c : corners) {
      const auto relax = [&](const Waypoint& from) {
        if (from.way >= kFar) return;
        const double way = from.way + distance(from.at, c.at);
        if (way >= c.way - 1e-9 || house_between(from.at, c.at)) return;
        c.way = way;
        changed = true;
      };
      relax(waypoints_.front());
      for (const Waypoint& other : corners) relax(other);
    }
  }
  for (const Waypoint& c : corners)
    if (c.way < kFar) waypoints_.push_back(c);
}

bool Approach::house_between(Point a, Point b) const {
  for (const Ring& ring : houses_)
    for (std::size_t i = 0; i < ring.size(); ++i)
      if (properly_cross({a, b}, {ring[i], ring[(i + 1) % ring.size()]})) return true;
  return false;
}

double Approach::distance_to(const Segment& header) const {
  if (waypoints_.empty()) return 0;
  double best = kFar;
  for (const Waypoint& w : waypoints_) {
    const Point near = nearest_point(header, w.at);
    const double least = w.way + way_between(w.at, near);
    if (least >= best) continue;
    if (!house_between(w.at, near)) {
      best = least;
      continue;
    }
    for (Point p : {header.a, header.b}) {
      const double way = w.way + way_between(w.at, p);
      if (way < best && !house_between(w.at, p)) best = way;
    }
  }
  return best;
}

double Approach::at_least_to(double x, double low, double high) const {
  if (waypoints_.empty()) return 0;
  double best = kFar;
  for (const Waypoint& w : waypoints_) {
    if (w.way + std::abs(x - w.at.x) >= best) continue;
    best = std::min(best, w.way + way_between(w.at, {x, std::min(std::max(w.at.y, low), high)}));
  }
  return best;
}

Approach Approach::turned(double angle) const {
  Approach out = *this;
  const Turn turn(angle);
  for (Ring& ring : out.houses_)
    for (Point& p : ring) p = turn.there(p);
  for (Waypoint& w : out.waypoints_) w.at = turn.there(w.at);
  return out;
}

double Approach::distance_round(const Segment& header, const std::vector<Ring>& blocks) const {
  if (waypoints_.empty()) return 0;
  const auto open = [&](Point a, Point b) {
    for (const Ring& ring : blocks)
      for (std::size_t i = 0; i < ring.size(); ++i)
        if (properly_cross({a, b}, {ring[i], ring[(i + 1) % ring.size()]})) return false;
    return !house_between(a, b);
  };
  double best = kFar;
  for (const Waypoint& w : waypoints_) {
    const Point near = nearest_point(header, w.at);
    const double least = w.way + way_between(w.at, near);
    // Round a block is no shorter than straight on.
    if (least >= best) continue;
    for (Point p : {near, header.a, header.b}) {
      const double way = w.way + way_between(w.at, p);
      if (way < best && open(w.at, p)) best = way;
    }
    for (const Ring& ring : blocks)
      for (std::size_t i = 0; i < ring.size(); ++i) {
        const double there = w.way + way_between(w.at, ring[i]);
        if (there >= best || !open(w.at, ring[i])) continue;
        for (Point p : {header.a, header.b})
          if (there + way_between(ring[i], p) < best && open(ring[i], p))
            best = there + way_between(ring[i], p);
        for (std::size_t next : {(i + 1) % ring.size(), (i + ring.size() - 1) % ring.size()}) {
          const Point corner = ring[next], last = nearest_point(header, corner);
          const double way = there + way_between(ring[i], corner) + way_between(corner, last);
          if (way < best && open(ring[i], corner) && open(corner, last)) best = way;
        }
      }
  }
  return best;
}

}  // namespace underlawn
