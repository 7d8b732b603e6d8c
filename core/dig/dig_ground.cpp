// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/dig_ground.h"

#include <limits>

#include "base/say.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

// What neither spoil nor machine may touch; nothing for other kinds.
Region kept_free(const Feature& f) {
  switch (f.kind) {
    case FeatureKind::house:
    case FeatureKind::septic_tank:
    case FeatureKind::drain_field:
    case FeatureKind::reserve_field:
    case FeatureKind::no_dig:
      return f.points.size() > 2 ? region_of(f.points) : Region{};
    case FeatureKind::well:
      return f.points.empty() ? Region{} : buffered(f.points[0], kWellKept);
    case FeatureKind::tree:
      return f.points.empty() ? Region{} : buffered(f.points[0], f.trunk_diameter / 2 + kTrunkKept);
    default:
      return {};
  }
}

Region lot_of(const Site& site) {
  return site.lot.size() > 2 ? region_of(lot_ring(site)) : Region{};
}

Region open_ground(const Site& site) {
  std::vector<Region> kept;
  for (const Feature& f : site.features)
    if (Region r = kept_free(f); !r.empty()) kept.push_back(std::move(r));
  return subtract(lot_of(site), unite(kept));
}

Region dear_ground(const Site& site) {
  std::vector<Region> dear;
  for (const Feature& f : site.features) {
    if (f.kind == FeatureKind::drive && f.points.size() > 2) dear.push_back(region_of(f.points));
    if (f.kind == FeatureKind::tree && !f.points.empty())
      dear.push_back(buffered(f.points[0], root_zone_radius(site, f)));
  }
  return unite(dear);
}

std::vector<DigGround::Beside> driven_beside(const Site& site) {
  std::vector<DigGround::Beside> all;
  for (const Feature& f : site.features)
    if (driven_off(f) > 0 && f.points.size() > 2) all.push_back({region_of(f.points), driven_off(f)});
  return all;
}

Region lines_ground(const Site& site) {
  std::vector<Region> parts;
  for (const Feature& f : site.features)
    if (f.kind == FeatureKind::utility && f.points.size() > 1)
      parts.push_back(buffered(f.points, kToleranceZone));
  return unite(parts);
}

Region roots_and_walls_of(const Site& site) {
  std::vector<Region> parts;
  for (const Feature& f : site.features) {
    if (f.kind == FeatureKind::house && f.points.size() > 2)
      parts.push_back(grown(region_of(f.points), kSpoilOffWall));
    if (f.kind == FeatureKind::tree && !f.points.empty())
      parts.push_back(buffered(f.points[0], root_zone_radius(site, f)));
  }
  return unite(parts);
}

bool meets(const Segment& leg, const Region& region) {
  for (const Polygon& p : region)
    if (line_area_distance({leg.a, leg.b}, p.outer) < kSamePlace) return true;
  return false;
}

std::vector<Segment> lot_sides(const Site& site) {
  std::vector<Segment> sides;
  for (std::size_t i = 0; i < site.lot.size(); ++i)
    sides.push_back({site.lot[i].at, site.lot[(i + 1) % site.lot.size()].at});
  return sides;
}

Point nearest_on_lot(const Site& site, Point p) {
  double least = std::numeric_limits<double>::infinity();
  Point best = p;
  for (const Segment& side : lot_sides(site)) {
    const Point at = nearest_on(side, p);
    if (distance(at, p) >= least) continue;
    least = distance(at, p);
    best = at;
  }
  return best;
}

constexpr double kMouthReach = 0.3;  // m that a drive may be drawn short of the lot line

// Where a drive lies on the lot line: the middle of the stretch they share, or its corner nearest the line.
std::optional<Point> drive_mouth(const Site& site) {
  double least = std::numeric_limits<double>::infinity();
  std::optional<Point> best;
  for (const Feature& f : site.features) {
    if (f.kind != FeatureKind::drive || f.points.size() < 3) continue;
    const Box box = bounds(f.points);
    const auto in_box = [&](Point p) {
      return p.x > box.low.x - kMouthReach && p.x < box.high.x + kMouthReach &&
             p.y > box.low.y - kMouthReach && p.y < box.high.y + kMouthReach;
    };
    for (const Segment& side : lot_sides(site)) {
      Point sum{0, 0};
      int met = 0;
      constexpr int kSteps = 200;
      for (int i = 0; i <= kSteps; ++i) {
        const Point p = side.a + (static_cast<double>(i) / kSteps) * (side.b - side.a);
        if (!in_box(p) || distance(f.points, p) > kMouthReach) continue;
        sum = sum + p;
        ++met;
      }
      if (met > 1) return (1.0 / met) * sum;
    }
    for (Point p : f.points) {
      const Point at = nearest_on_lot(site, p);
      if (distance(at, p) >= least) continue;
      least = distance(at, p);
      best = at;
    }
  }
  return best;
}

}  // namespace

DigGround::DigGround(const Site& site)
    : open(open_ground(site)),
      dear(dear_ground(site)),
      sight(open),
      roots_and_walls(roots_and_walls_of(site)),
      lines(lines_ground(site)),
      shunned(unite({roots_and_walls, lines})),
      off_roots_and_walls(subtract(open, roots_and_walls)),
      off_lines(subtract(open, lines)),
      careful(subtract(open, shunned)),
      beside(driven_beside(site)),
      has_lot(site.lot.size() > 2) {}

double driven_off(const Feature& f) {
  switch (f.kind) {
    case FeatureKind::house:
      return kDriveOffWall;
    case FeatureKind::septic_tank:
    case FeatureKind::drain_field:
      return kDriveOffSeptic;
    default:
      return 0;
  }
}

std::string blocker_of(const Site& site, const Segment& leg) {
  for (const Feature& f : site.features)
    if (meets(leg, kept_free(f))) return display_name(f);
  for (const Segment& side : lot_sides(site))
    if (distance(side, leg) < kSamePlace) return say("the lot line");
  return site.lot.size() > 2 && !contains(region_of(lot_ring(site)), leg) ? say("the lot line") : "";
}

std::optional<Point> access_of(const Site& site, const std::optional<Point>& asked, bool& over_drive) {
  over_drive = false;
  if (site.lot.size() < 3) return std::nullopt;
  if (asked) return nearest_on_lot(site, *asked);
  const auto mouth = drive_mouth(site);
  over_drive = mouth.has_value();
  return mouth;
}

}  // namespace underlawn
