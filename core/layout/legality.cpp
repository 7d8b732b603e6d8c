// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/legality.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "layout/zones.h"
#include "plane/strip.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

constexpr double kInfinite = 1e9;

double ring_distance(const Ring& ring, const Polyline& line) {
  double least = kInfinite;
  for (std::size_t i = 0; i < ring.size(); ++i)
    for (std::size_t j = 1; j < line.size(); ++j)
      least = std::min(
          least, distance(Segment{ring[i], ring[(i + 1) % ring.size()]}, Segment{line[j - 1], line[j]}));
  return least;
}

Polyline closed(Ring ring) {
  if (!ring.empty()) ring.push_back(ring.front());
  return ring;
}

double outline_distance(const Feature& f, const Polyline& line) {
  if (shape_of(f.kind) == FeatureShape::area) return ring_distance(f.points, line);
  double least = kInfinite;
  for (std::size_t j = 1; j < line.size(); ++j) {
    const Segment s{line[j - 1], line[j]};
    if (f.points.size() == 1) least = std::min(least, distance(s, f.points.front()));
    for (std::size_t i = 1; i < f.points.size(); ++i)
      least = std::min(least, distance(Segment{f.points[i - 1], f.points[i]}, s));
  }
  return least;
}

// No less than this apart, by what they cover along x and y alone.
double boxes_apart(const Box& a, const Box& b) {
  const double dx = std::max({0.0, b.low.x - a.high.x, a.low.x - b.high.x});
  const double dy = std::max({0.0, b.low.y - a.high.y, a.low.y - b.high.y});
  return std::sqrt(dx * dx + dy * dy);
}

bool surely_apart(const Box& a, const Box& b, double needed) {
  return boxes_apart(a, b) > std::max(0.0, needed) + kLegalSlack;
}

Box box_of(const Segment& s) {
  return {{std::min(s.a.x, s.b.x), std::min(s.a.y, s.b.y)}, {std::max(s.a.x, s.b.x), std::max(s.a.y, s.b.y)}};
}

// Both as lines: where no outline comes near, one lies wholly inside the other or wholly outside.
bool clear_of(const Feature& f, const Ring& shape, const Polyline& line, double needed) {
  if (surely_apart(bounds(f.points), bounds(line), needed)) return true;
  if (outline_distance(f, line) < needed - kLegalSlack) return false;
  if (shape_of(f.kind) == FeatureShape::area && contains(f.points, line.front())) {
    double on_edge = kInfinite;
    for (std::size_t i = 0; i < f.points.size(); ++i)
      on_edge = std::min(on_edge,
                         distance(Segment{f.points[i], f.points[(i + 1) % f.points.size()]}, line.front()));
    if (on_edge > kLegalSlack) return false;
  }
  return shape.size() < 3 || f.points.empty() || !contains(shape, f.points.front());
}

bool inside_lot(const Site& site, const Polyline& line, double margin) {
  const Ring lot = lot_ring(site);
  if (lot.size() < 3 || !contains(lot, 0.5 * (line[0] + line[1]))) return false;
  const Box around = bounds(line);
  for (std::size_t i = 0; i < site.lot.size(); ++i) {
    const Segment edge{lot[i], lot[(i + 1) % lot.size()]};
    if (surely_apart(box_of(edge), around, site.lot[i].setback + margin)) continue;
    for (std::size_t j = 1; j < line.size(); ++j)
      if (distance(edge, Segment{line[j - 1], line[j]}) < site.lot[i].setback + margin - kLegalSlack)
        return false;
  }
  return true;
}

// A hair smaller, so that a trench that only touches a thing does not count as on it.
Ring core_of(const Polyline& axis, double width) {
  return strip_along(trimmed(axis, kLegalSlack, kLegalSlack), std::max(kLegalSlack, width - 2 * kLegalSlack));
}

// Whether two convex rings overlap or come nearer than `gap`.
bool nearer(const Ring& a, const Ring& b, double gap) {
  return ring_distance(a, closed(b)) < gap || contains(a, b.front()) || contains(b, a.front());
}

}  // namespace

bool trench_is_legal(const Site& site, const Segment& axis, double width) {
  return bent_trench_is_legal(site, {axis.a, axis.b}, width);
}

bool bent_trench_is_legal(const Site& site, const Polyline& axis, double width) {
  const Ring core = core_of(axis, width);
  const Polyline outline = closed(core);
  const Box around = bounds(core);
  for (std::size_t i = 0; i < site.lot.size(); ++i) {
    const Segment edge{site.lot[i].at, site.lot[(i + 1) % site.lot.size()].at};
    if (surely_apart(box_of(edge), around, 0)) continue;
    // The core has given a slack away already, so a line that meets it is inside the trench.
    if (ring_distance(core, {edge.a, edge.b}) <= 0 || contains(core, edge.a)) return false;
  }
  // And of a clearance no second slack: the core is as much farther off as it is smaller.
  if (!inside_lot(site, outline, kLegalSlack)) return false;
  return std::all_of(site.features.begin(), site.features.end(), [&](const Feature& f) {
    const double needed = trench_clearance(site, f) + kLegalSlack;
    return surely_apart(bounds(f.points), around, needed) ||
           (outline_distance(f, outline) > 0 && clear_of(f, core, outline, needed));
  });
}

namespace {

bool side_by_side(const Segment& a, const Segment& b) {
  const double long_ = distance(a.a, a.b);
  const Point u = unit(a.b - a.a);
  const bool alike = std::abs(dot(u, unit(b.b - b.a))) >= std::cos(std::numbers::pi / 6);
  const double from = std::min(dot(b.a - a.a, u), dot(b.b - a.a, u));
  const double to = std::max(dot(b.a - a.a, u), dot(b.b - a.a, u));
  return alike && std::min(long_, to) - std::max(0.0, from) > kLegalSlack;
}

}  // namespace

bool pair_is_legal(const Segment& a, const Segment& b, const Wishes& w) {
  if (side_by_side(a, b)) return distance(a, b) >= w.spacing - kLegalSlack;
  return !nearer(rectangle_along(a, w.trench_width), rectangle_along(b, w.trench_width),
                 w.end_gap - kLegalSlack);
}

double lacking(const Segment& a, const Segment& b, const Wishes& w) {
  if (side_by_side(a, b)) return std::max(0.0, w.spacing - distance(a, b));
  const double apart = area_distance(rectangle_along(a, w.trench_width), rectangle_along(b, w.trench_width));
  return std::max(0.0, w.end_gap - apart);
}

bool bent_pair_is_legal(const Polyline& a, const Polyline& b, const Wishes& w) {
  for (std::size_t i = 1; i < a.size(); ++i)
    for (std::size_t j = 1; j < b.size(); ++j)
      if (!pair_is_legal(Segment{a[i - 1], a[i]}, Segment{b[j - 1], b[j]}, w)) return false;
  return true;
}

bool conduit_is_legal(const Site& site, const Wishes& w, const Polyline& line, double free_start) {
  const double half = w.run_width / 2;
  Polyline rest = line;
  if (free_start > 0 && distance(line[0], line[1]) > free_start)
    rest.front() = line[0] + free_start * unit(line[1] - line[0]);
  else if (free_start > 0)
    rest.erase(rest.begin());
  if (!inside_lot(site, line, half)) return false;
  const int own = site.entry ? site.entry->house_id : 0;
  return std::all_of(site.features.begin(), site.features.end(), [&](const Feature& f) {
    if (crossable(f)) return true;
    const Polyline& judged = f.id == own ? rest : line;
    return judged.size() < 2 || clear_of(f, {}, judged, run_clearance(site, f) + half);
  });
}

bool conduit_keeps_off(const Polyline& line, const Segment& trench, const Wishes& w) {
  return conduit_keeps_off_bent(line, {trench.a, trench.b}, w);
}

bool conduit_keeps_off_bent(const Polyline& line, const Polyline& trench, const Wishes& w) {
  const Polyline coil = trimmed(trench, w.run_width / 2 + kLegalSlack, kLegalSlack);
  const Ring kept = strip_along(coil, w.trench_width + w.run_width - 2 * kLegalSlack);
  const Box around = bounds(kept);
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Segment s{line[i - 1], line[i]};
    if (surely_apart(box_of(s), around, 0)) continue;
    if (contains(kept, s.a) || ring_distance(kept, {s.a, s.b}) <= 0) return false;
  }
  return true;
}

}  // namespace underlawn
