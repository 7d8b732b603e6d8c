// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/zones.h"

#include <algorithm>

#include "base/say.h"
#include "layout/in_steps.h"
#include "plane/subtract_all.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

void add_capsule(Confines& g, Point a, Point b, double reach) {
  g.capsules.push_back({a, b, std::max(0.0, reach)});
  g.owner.push_back(static_cast<int>(g.restrictions.size()) - 1);
}

void add_feature(Confines& g, const Feature& f, double reach) {
  g.restrictions.push_back({Restriction::Kind::feature, -1, f.id});
  const auto& p = f.points;
  if (p.size() == 1) add_capsule(g, p[0], p[0], reach);
  for (std::size_t i = 1; i < p.size(); ++i) add_capsule(g, p[i - 1], p[i], reach);
  if (shape_of(f.kind) != FeatureShape::area) return;
  if (p.size() > 2) add_capsule(g, p.back(), p.front(), reach);
  g.areas.push_back(p);
  g.area_owner.push_back(static_cast<int>(g.restrictions.size()) - 1);
}

bool odd_even_inside(const Ring& ring, Point p) {
  bool inside = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const Point a = ring[i], b = ring[j];
    if ((a.y > p.y) == (b.y > p.y)) continue;
    if (p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

// How much wider than asked a region made by the clipper may keep off: see region.h.
constexpr double kRegionShare = 1.01;
constexpr double kRegionSpare = 0.01;  // m

Confines lot_ground(const Site& site, double share, double spare) {
  Confines g;
  g.lot = lot_ring(site);
  for (std::size_t i = 0; i < site.lot.size(); ++i) {
    g.restrictions.push_back({Restriction::Kind::setback, static_cast<int>(i), 0});
    add_capsule(g, site.lot[i].at, site.lot[(i + 1) % site.lot.size()].at,
                share * site.lot[i].setback + spare);
  }
  return g;
}

}  // namespace

Confines trench_ground(const Site& site) {
  Confines g = lot_ground(site, 1, 0);
  for (const Feature& f : site.features) add_feature(g, f, trench_clearance(site, f));
  return g;
}

Confines conduit_ground(const Site& site) {
  Confines g = lot_ground(site, kRegionShare, kRegionSpare);
  for (const Feature& f : site.features)
    if (!crossable(f)) add_feature(g, f, kRegionShare * run_clearance(site, f) + kRegionSpare);
  return g;
}

bool is_open(const Confines& ground, Point p) {
  if (!odd_even_inside(ground.lot, p)) return false;
  return std::none_of(ground.areas.begin(), ground.areas.end(),
                      [p](const Ring& r) { return odd_even_inside(r, p); });
}

Region grown_feature(const Feature& f, double by) {
  switch (shape_of(f.kind)) {
    case FeatureShape::area: {
      const Region r = region_of(f.points);
      return by > 0 ? grown(r, by) : r;
    }
    case FeatureShape::line:
      return by > 0 ? buffered(f.points, by) : Region{};
    case FeatureShape::point:
      return by > 0 ? buffered(f.points.front(), by) : Region{};
  }
  return {};
}

namespace {

std::optional<Trouble> feature_trouble(const Feature& f) {
  const FeatureShape shape = shape_of(f.kind);
  if (shape == FeatureShape::area) {
    auto ring = checked_ring(f.points, display_name(f));
    if (!ring) return ring.error();
    return std::nullopt;
  }
  const std::size_t needed = shape == FeatureShape::line ? 2 : 1;
  const auto bad = [](Point p) { return !(std::abs(p.x) <= kLargestPlan && std::abs(p.y) <= kLargestPlan); };
  if (f.points.size() >= needed && f.points.size() <= kMostRingPoints &&
      std::none_of(f.points.begin(), f.points.end(), bad))
    return std::nullopt;
  return Trouble{"feature_not_drawn", display_name(f), say("{} points", std::to_string(f.points.size())),
                 say("at least {}, within 10 km of the origin", std::to_string(needed)),
                 say("Draw it again or delete it.")};
}

bool can_be_offset(const LotCorner& c) {
  const auto within = [](double v) { return std::abs(v) <= kLargestPlan; };
  return within(c.at.x) && within(c.at.y) && c.setback >= 0 && c.setback <= kLargestPlan;
}

Point longest_edge(const Ring& lot) {
  Point longest{};
  for (std::size_t i = 0; i < lot.size(); ++i) {
    const Point edge = lot[(i + 1) % lot.size()] - lot[i];
    if (in_steps(norm(edge)) > in_steps(norm(longest))) longest = edge;
  }
  return longest;
}

// Round a point the corners stand to the lot, not to east: ways bend at them, and are to bend at the turned
// places where the lot is turned.
Region grown_with_lot(const Feature& f, double by, Point along) {
  if (shape_of(f.kind) != FeatureShape::point || !(by > 0)) return grown_feature(f, by);
  const double angle = std::atan2(along.y, along.x);
  Ring disc;
  for (const Polygon& p : buffered(Point{0, 0}, by))
    for (Point corner : p.outer) disc.push_back(f.points.front() + rotated(corner, angle));
  return region_of(disc);
}

Result<Region> ground_left(const Site& site, const std::vector<std::pair<const Feature*, double>>& zones,
                           const Region& bands) {
  const Ring lot = lot_ring(site);
  auto ring = checked_ring(lot, say("lot line"));
  if (!ring) return refuse(ring.error());
  for (const LotCorner& c : site.lot)
    if (!(c.setback >= 0 && c.setback <= kLargestPlan))
      return refuse({"setback_out_of_range", say("setback"), std::to_string(c.setback) + " m",
                     say("0 to 10000 m"), say("Enter the setback of that edge again.")});
  std::vector<Region> taken = {bands};
  const Point along = longest_edge(lot);
  for (const auto& [f, by] : zones) {
    if (auto trouble = feature_trouble(*f)) return refuse(*trouble);
    taken.push_back(grown_with_lot(*f, by, along));
  }
  return subtract_all(region_of(*ring), taken);
}

}  // namespace

Region setback_bands(const Site& site) {
  if (!std::all_of(site.lot.begin(), site.lot.end(), can_be_offset)) return {};
  const Ring lot = lot_ring(site);
  std::vector<Region> bands;
  for (std::size_t i = 0; i < lot.size(); ++i)
    if (site.lot[i].setback > 0)
      bands.push_back(buffered(Polyline{lot[i], lot[(i + 1) % lot.size()]}, site.lot[i].setback));
  return unite(bands);
}

Result<Region> buildable_region(const Site& site, const Region& bands) {
  std::vector<std::pair<const Feature*, double>> zones;
  for (const Feature& f : site.features) zones.push_back({&f, std::max(kGrid, trench_clearance(site, f))});
  return ground_left(site, zones, bands);
}

Result<Region> routable_region(const Site& site, const Region& bands) {
  std::vector<std::pair<const Feature*, double>> zones;
  for (const Feature& f : site.features)
    if (!crossable(f)) zones.push_back({&f, std::max(kGrid, run_clearance(site, f))});
  return ground_left(site, zones, bands);
}

Result<Region> buildable_region(const Site& site) {
  return buildable_region(site, setback_bands(site));
}

Result<Region> routable_region(const Site& site) {
  return routable_region(site, setback_bands(site));
}

}  // namespace underlawn
