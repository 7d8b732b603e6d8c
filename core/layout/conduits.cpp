// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "layout/amounts.h"
#include "layout/connect.h"
#include "layout/legality.h"
#include "layout/square_crossings.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

constexpr double kGrazed = 3e-3;  // m
// In metres of plain digging.
constexpr double kFootingPrice = 0.5;  // a metre beside a footing
constexpr double kBesideFooting = 1;   // m beyond its clearance
constexpr double kTieBreak = 0.2;      // an entry that costs nothing
constexpr double kTrifle = 1e-3;
constexpr double kLawnPrice = 4;   // a metre through lawn
constexpr double kTrunkPrice = 2;  // a metre near a trunk
constexpr double kNearTrunk = 8;   // m

// Prices of crossing, in metres of plain digging: hand digging and bracing at a utility, pavement cut and
// made good, a permission to be asked for. Common practice, no source.
DearGround dear_ground(const Feature& f, double half_width) {
  DearGround d;
  switch (f.kind) {
    case FeatureKind::utility:
      d = {grown_feature(f, kToleranceZone + half_width), 3, 3};
      break;
    case FeatureKind::drive:
      d = {grown_feature(f, half_width), 2, 6};
      break;
    default:
      d = {grown_feature(f, half_width), 1, 2};
  }
  return d;
}

// The same by what the aim counts: the designer's money, or nothing but the lawn. `plain`: money for a metre
// of run trench through lawn.
DearGround dear_by_aim(const Feature& f, const Wishes& w, double plain) {
  DearGround d = dear_ground(f, w.run_width / 2);
  const bool utility = f.kind == FeatureKind::utility, drive = f.kind == FeatureKind::drive;
  if (w.aim == Aim::lawn && (utility || drive)) {
    d.per_metre = 0;
    d.per_entry = kTieBreak;
  } else if ((w.aim == Aim::cost || w.aim == Aim::mix) && plain > 0) {
    const double lawn = w.prices.lawn * torn_width(w.run_width, w.run_depth);
    if (utility) d = {d.region, 0, w.prices.hand_crossing / plain};
    if (drive) d = {d.region, std::max(0.0, w.prices.pavement * w.run_width - lawn) / plain, 0};
  }
  return d;
}

// Pavement so far from its edge that nothing beside the trench lies on lawn; of a narrow drive all of it.
Region pavement_to_dig_in(const Feature& drive, const Wishes& w) {
  const Region all = grown_feature(drive, 0);
  const Region middle = grown(all, -torn_width(w.run_width, w.run_depth) / 2);
  return middle.empty() ? all : middle;
}

// Lawn is what costs, where lawn is all that counts; near trunks, where those are.
void add_aim_ground(const Site& site, const Wishes& w, const Region& free, std::vector<DearGround>& dear) {
  std::vector<Region> drives, trunks;
  for (const Feature& f : site.features) {
    if (f.kind == FeatureKind::drive) drives.push_back(pavement_to_dig_in(f, w));
    if (f.kind == FeatureKind::tree) trunks.push_back(grown_feature(f, kNearTrunk));
  }
  if (w.aim == Aim::lawn && !drives.empty()) {
    dear.push_back({subtract(free, unite(drives)), kLawnPrice, 0});
    // Ways bend at corners of dear ground only: so that they may bend into a drive it costs a trifle itself.
    dear.push_back({unite(drives), kTrifle, 0});
  }
  if (w.aim == Aim::trees && !trunks.empty()) dear.push_back({unite(trunks), kTrunkPrice, 0});
}

// Beside a footing digging is slower, and it is shored or stepped down: nearer to a house than that clearance
// and kBesideFooting more. Mitred, so that it has few corners.
DearGround beside_footing(const Site& site, const Feature& house, const Wishes& w) {
  const double reach = run_clearance(site, house) + w.run_width / 2 + kBesideFooting;
  std::vector<Region> strips;
  for (std::size_t i = 0; i < house.points.size(); ++i) {
    const Point a = house.points[i], b = house.points[(i + 1) % house.points.size()];
    if (distance(a, b) < kSamePlace) continue;
    const Point u = unit(b - a);
    strips.push_back(region_of(rectangle_along({a - reach * u, b + reach * u}, 2 * reach)));
  }
  return {unite(strips), kFootingPrice, 0};
}

struct Wall {
  Point foot, outward;
};

std::optional<Wall> wall_at(const Feature& house, Point entry) {
  std::optional<Wall> best;
  double least = 1e9;
  for (std::size_t i = 0; i < house.points.size(); ++i) {
    const Segment s{house.points[i], house.points[(i + 1) % house.points.size()]};
    if (distance(s.a, s.b) < kSamePlace) continue;
    const Point foot = nearest_on(s, entry);
    const double away = distance(foot, entry);
    if (away >= least - 1e-9) continue;
    least = away;
    const Point n = left_normal(unit(s.b - s.a));
    const bool inward = contains(house.points, 0.5 * (s.a + s.b) + 1e-3 * n);
    best = Wall{foot, inward ? -1.0 * n : n};
  }
  return best;
}

// The stub may cross the house's own clearance, nothing else.
bool stub_is_free(const Site& site, const Wishes& wishes, const Segment& stub, const Feature& house) {
  const double long_ = distance(stub.a, stub.b);
  const Point u = unit(stub.b - stub.a);
  double d = 0.02;
  while (d < long_) {
    if (contains(house.points, stub.a + d * u)) return false;
    d += 0.05;
  }
  return conduit_is_legal(site, wishes, {stub.a, stub.b}, long_);
}

std::vector<Polyline> stubs_of(const Site& site, const Wishes& wishes, const Region& free) {
  std::vector<Polyline> stubs;
  const Feature* house = find_feature(site, site.entry->house_id);
  if (house == nullptr || house->points.size() < 3) return stubs;
  const auto wall = wall_at(*house, site.entry->at);
  if (!wall) return stubs;
  const double clear = run_clearance(site, *house) + wishes.run_width / 2;
  for (double degrees : {0.0, 15.0, -15.0, 30.0, -30.0, 45.0, -45.0, 60.0, -60.0, 75.0, -75.0}) {
    const double turn = degrees * std::numbers::pi / 180;
    const Point u = rotated(wall->outward, turn);
    for (double more : {0.01, 0.5, 1.5, 3.0}) {
      const Point out = wall->foot + ((clear + more) / std::cos(turn)) * u;
      if (!contains(free, out)) continue;
      if (!stub_is_free(site, wishes, {wall->foot, out}, *house)) break;
      stubs.push_back({site.entry->at, out});
      break;
    }
    if (stubs.size() == 3) break;
  }
  return stubs;
}

}  // namespace

Conduits unpriced_conduits(const Site& site, const Wishes& wishes, const Region& routable) {
  Conduits c;
  c.width = wishes.run_width;
  c.spacing = wishes.spacing;
  c.keep = (wishes.run_width + wishes.trench_width) / 2;
  // A leg of a route may graze the edge of its ground by a millimetre or two: that much is kept off.
  c.free = grown(routable, -(wishes.run_width / 2 + kGrazed));
  if (!site.entry) return c;
  c.entry = site.entry->at;
  c.stubs = stubs_of(site, wishes, c.free);
  return c;
}

Conduits conduits_for(const Site& site, const Wishes& wishes, const Region& routable) {
  Conduits c = unpriced_conduits(site, wishes, routable);
  std::vector<DearGround> dear;
  for (const Feature& f : site.features)
    if (crossable(f)) dear.push_back(dear_by_aim(f, wishes, money_of_run_metre(wishes)));
  for (const Feature& f : site.features)
    if (f.kind == FeatureKind::house) dear.push_back(beside_footing(site, f, wishes));
  add_aim_ground(site, wishes, c.free, dear);
  c.dear = ReadyDear(dear);
  for (const Feature& f : site.features)
    for (std::size_t i = 1; f.kind == FeatureKind::utility && i < f.points.size(); ++i)
      c.dear.add(DearLine{{f.points[i - 1], f.points[i]}, kSlant, kSquareDetour});
  return c;
}

}  // namespace underlawn
