// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <boost/geometry/index/rtree.hpp>
#include <cmath>
#include <optional>

#include "base/quantity.h"
#include "plane/boost_types.h"
#include "plane/region.h"

namespace underlawn {
namespace {

std::string place(Point p) {
  return print_quantity(Quantity::length, p.x, UnitSystem::metric) + " right, " +
         print_quantity(Quantity::length, p.y, UnitSystem::metric) + " up";
}

Result<Ring> without_repeats(const Ring& drawn, const std::string& name) {
  Ring ring;
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    const Point p = drawn[i];
    // Written so that not-a-number is refused too.
    if (!(std::abs(p.x) <= kLargestPlan && std::abs(p.y) <= kLargestPlan))
      return refuse({"ring_out_of_reach", name + ", corner " + std::to_string(i + 1), place(p),
                     "within 10 km of the drawing's origin", "Move or delete that corner."});
    if (ring.empty() || distance(ring.back(), p) > kSamePlace) ring.push_back(p);
  }
  while (ring.size() > 1 && distance(ring.front(), ring.back()) <= kSamePlace) ring.pop_back();
  return ring;
}

// Corners in the middle of a straight side; a spike that runs out and back along itself goes with them.
void drop_straight_corners(Ring& ring) {
  bool dropped = true;
  while (dropped && ring.size() > 3) {
    dropped = false;
    for (std::size_t i = 0; i < ring.size() && ring.size() > 3; ++i) {
      const std::size_t n = ring.size();
      const Point a = ring[(i + n - 1) % n], b = ring[i], c = ring[(i + 1) % n];
      const bool repeated = distance(a, b) <= kSamePlace;
      if (!repeated && distance(a, c) > kSamePlace && distance(Segment{a, c}, b) > kSamePlace * 1e-3)
        continue;
      ring.erase(ring.begin() + static_cast<long>(i));
      dropped = true;
    }
  }
}

bool cross_in_the_open(const Segment& a, const Segment& b) {
  if (a.a == a.b || b.a == b.b) return false;
  const auto side = [](const Segment& s, Point p) { return cross(unit(s.b - s.a), p - s.a); };
  const double a1 = side(a, b.a), a2 = side(a, b.b), b1 = side(b, a.a), b2 = side(b, a.b);
  const double touch = kSamePlace;
  const auto apart = [touch](double s, double t) {
    return (s > touch && t < -touch) || (s < -touch && t > touch);
  };
  return apart(a1, a2) && apart(b1, b2);
}

std::optional<Point> crossing_place(const Ring& ring) {
  namespace bgi = bg::index;
  using BoostBox = bg::model::box<Point>;
  std::vector<std::pair<BoostBox, std::size_t>> boxes;
  const auto edge = [&](std::size_t i) { return Segment{ring[i], ring[(i + 1) % ring.size()]}; };
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Segment s = edge(i);
    boxes.push_back(
        {{{std::min(s.a.x, s.b.x), std::min(s.a.y, s.b.y)}, {std::max(s.a.x, s.b.x), std::max(s.a.y, s.b.y)}},
         i});
  }
  const bgi::rtree<std::pair<BoostBox, std::size_t>, bgi::quadratic<16>> tree(boxes);
  for (const auto& [box, i] : boxes)
    for (auto it = tree.qbegin(bgi::intersects(box)); it != tree.qend(); ++it) {
      if (it->second <= i + 1) continue;
      const Segment a = edge(i), b = edge(it->second);
      if (!cross_in_the_open(a, b)) continue;
      const Point d = a.b - a.a, e = b.b - b.a;
      return a.a + cross(b.a - a.a, e) / cross(d, e) * d;
    }
  return std::nullopt;
}

Trouble crosses(const std::string& name, const std::string& where) {
  return {"ring_crosses_itself", name, "crosses itself" + where, "an outline whose sides do not cross",
          "Move a corner so that the sides no longer cross."};
}

}  // namespace

Result<Ring> checked_ring(const Ring& drawn, std::string_view name_view) {
  const std::string name(name_view);
  if (drawn.size() > kMostRingPoints)
    return refuse({"ring_too_many_points", name, std::to_string(drawn.size()) + " corners",
                   "at most " + std::to_string(kMostRingPoints) + " corners",
                   "Simplify the outline before it is drawn."});
  if (drawn.empty())
    return refuse({"ring_too_few_points", name, "not drawn", "an outline of at least 3 corners",
                   "Draw it corner by corner."});
  auto kept = without_repeats(drawn, name);
  if (!kept) return kept;
  Ring ring = std::move(*kept);
  if (ring.size() >= 3) drop_straight_corners(ring);
  if (ring.size() < 3)
    return refuse({"ring_too_few_points", name, std::to_string(ring.size()) + " distinct corners",
                   "at least 3 corners", "Draw its other corners."});
  const double signed_area = bg::area(boost_ring(ring));
  if (const auto at = crossing_place(ring)) return refuse(crosses(name, " at " + place(*at)));
  if (std::abs(signed_area) < 1e-6)
    return refuse({"ring_no_area", name, "0 m2", "an area", "Move a corner: all of them lie on one line."});
  if (signed_area < 0) std::reverse(ring.begin(), ring.end());
  // What the clipper makes of it must be what was drawn: a ring that passes through itself at a corner is
  // not.
  if (std::abs(area(region_of(ring)) - std::abs(signed_area)) >
      1e-6 * std::abs(signed_area) + 1e-4 * perimeter(ring))
    return refuse(crosses(name, ""));
  return ring;
}

}  // namespace underlawn
