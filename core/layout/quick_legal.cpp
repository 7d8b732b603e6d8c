// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/quick_legal.h"

#include <numbers>

#include "layout/legality.h"
#include "layout/quick_distance.h"

namespace underlawn {

namespace {

constexpr double kSpare = 5e-4;     // m kept beyond what is asked
constexpr double kTouching = 5e-3;  // m: nearer than this to what is asked, it is what stops the trench
constexpr double kShortest = 0.05;  // m

Box bounds_of(const Ring& ring) {
  Box box{ring.front(), ring.front()};
  for (Point p : ring) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  }
  return box;
}

bool in_way(const Ring& floor, const Box& box, const Segment& of, double asked) {
  const double reach = asked + kSpare;
  if (std::max(of.a.x, of.b.x) + reach < box.low.x || std::min(of.a.x, of.b.x) - reach > box.high.x ||
      std::max(of.a.y, of.b.y) + reach < box.low.y || std::min(of.a.y, of.b.y) - reach > box.high.y)
    return false;
  const Segment way = quick_way(floor, of);
  return dot(way.b - way.a, way.b - way.a) < reach * reach || quick_inside(floor, of.a);
}

bool beside(const Segment& a, const Segment& b) {
  const double long_ = distance(a.a, a.b);
  const Point u = unit(a.b - a.a);
  if (std::abs(dot(u, unit(b.b - b.a))) < std::cos(std::numbers::pi / 6)) return false;
  const double one = dot(b.a - a.a, u), two = dot(b.b - a.a, u);
  return std::min(long_, std::max(one, two)) - std::max(0.0, std::min(one, two)) > kLegalSlack;
}

double floors_apart(const Ring& a, const Ring& b) {
  if (quick_inside(a, b.front()) || quick_inside(b, a.front())) return 0;
  double least = 1e300;
  for (std::size_t i = 0; i < b.size(); ++i) {
    const Segment way = quick_way(a, {b[i], b[(i + 1) % b.size()]});
    least = std::min(least, distance(way.a, way.b));
  }
  return least;
}

void add_way(std::vector<Point>& ways, Point along) {
  if (dot(along, along) < 1e-12) return;
  const Point u = unit(along);
  if (std::none_of(ways.begin(), ways.end(), [u](Point w) { return std::abs(cross(w, u)) < 1e-6; }))
    ways.push_back(u);
}

}  // namespace

QuickLegal::QuickLegal(const Site& site, const Wishes& wishes, std::vector<Polyline> others,
                       std::vector<Polyline> conduits)
    : wishes_(wishes),
      ground_(trench_ground(site)),
      others_(std::move(others)),
      conduits_(std::move(conduits)) {}

double QuickLegal::near_enough() const {
  return std::max(wishes_.spacing, wishes_.end_gap + 2 * wishes_.trench_width);
}

bool QuickLegal::free(const Segment& trench) const {
  if (distance(trench.a, trench.b) < kShortest) return false;
  const Ring floor = rectangle_along(trench, wishes_.trench_width);
  const Box box = bounds_of(floor);
  for (const Capsule& c : ground_.capsules)
    if (in_way(floor, box, {c.a, c.b}, c.reach)) return false;
  if (!is_open(ground_, 0.5 * (trench.a + trench.b)) || !off_conduits(floor)) return false;
  return std::all_of(others_.begin(), others_.end(),
                     [&](const Polyline& other) { return keeps_off(trench, floor, other); });
}

bool QuickLegal::off_conduits(const Ring& floor) const {
  const Box box = bounds_of(floor);
  for (const Polyline& line : conduits_)
    for (std::size_t i = 1; i < line.size(); ++i)
      if (in_way(floor, box, {line[i - 1], line[i]}, wishes_.run_width / 2)) return false;
  return true;
}

// The pair rule of legality.h, its middle lines and floors measured quickly.
bool QuickLegal::keeps_off(const Segment& trench, const Ring& floor, const Polyline& other) const {
  for (std::size_t j = 1; j < other.size(); ++j) {
    const Segment o{other[j - 1], other[j]};
    const double apart = quick_distance(o, trench);
    if (apart >= near_enough() + kSpare) continue;
    if (beside(o, trench)) {
      if (apart < wishes_.spacing + kSpare) return false;
    } else if (floors_apart(floor, rectangle_along(o, wishes_.trench_width)) < wishes_.end_gap + kSpare) {
      return false;
    }
  }
  return true;
}

void QuickLegal::add_ways_past(const Segment& trench, std::vector<Point>& ways) const {
  const Ring floor = rectangle_along(trench, wishes_.trench_width);
  for (const Capsule& c : ground_.capsules) {
    const Segment way = quick_way(floor, {c.a, c.b});
    if (distance(way.a, way.b) > c.reach + kTouching) continue;
    add_way(ways, c.b - c.a);
    add_way(ways, left_normal(way.b - way.a));
  }
  for (const Polyline& other : others_)
    for (std::size_t j = 1; j < other.size(); ++j) {
      if (quick_distance({other[j - 1], other[j]}, trench) > near_enough() + kTouching) continue;
      add_way(ways, other[j] - other[j - 1]);
      add_way(ways, left_normal(other[j] - other[j - 1]));
    }
}

}  // namespace underlawn
