// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/tape.h"

#include <algorithm>
#include <cmath>

namespace underlawn {

namespace {

bool strictly_inside(const Ring& ring, Point p) {
  bool inside = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const Point a = ring[i], b = ring[j];
    if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

double distance_to_segment(Point p, Point a, Point b) {
  const Point along = b - a;
  const double square = dot(along, along);
  const double t = square > 0 ? std::clamp(dot(p - a, along) / square, 0.0, 1.0) : 0;
  return distance(p, a + t * along);
}

bool on_outline(const Ring& ring, Point p) {
  for (std::size_t i = 0; i < ring.size(); ++i)
    if (distance_to_segment(p, ring[i], ring[(i + 1) % ring.size()]) <= kSameStake) return true;
  return false;
}

// Fractions of a..b at which it may pass into or out of the house: crossings of walls, and corners it grazes.
void add_changes(std::vector<double>& at, const Ring& ring, Point a, Point b) {
  const Point along = b - a;
  const double square = dot(along, along);
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point p = ring[i], wall = ring[(i + 1) % ring.size()] - p;
    at.push_back(dot(p - a, along) / square);
    const double denominator = cross(along, wall);
    if (denominator != 0) at.push_back(cross(p - a, wall) / denominator);
  }
}

// The parts of a..b between one change and the next, by their middles.
template <class Says>
bool any_middle(const Ring& ring, Point a, Point b, Says says) {
  std::vector<double> at = {0, 1};
  add_changes(at, ring, a, b);
  std::sort(at.begin(), at.end());
  for (std::size_t i = 1; i < at.size(); ++i) {
    const double from = std::max(0.0, at[i - 1]), to = std::min(1.0, at[i]);
    if (to > from && says(a + (from + to) / 2 * (b - a))) return true;
  }
  return false;
}

bool passes_through(const Ring& ring, Point a, Point b) {
  return any_middle(ring, a, b, [&](Point p) { return strictly_inside(ring, p) && !on_outline(ring, p); });
}

}  // namespace

double tape_error(double length) {
  return 0.005 + length / 1000;
}

bool tape_is_free(const std::vector<Ring>& houses, Point a, Point b) {
  if (distance(a, b) < kSamePlace) return true;
  return std::none_of(houses.begin(), houses.end(),
                      [&](const Ring& ring) { return ring.size() > 2 && passes_through(ring, a, b); });
}

TapeGround tape_ground(const Site& site) {
  TapeGround ground;
  for (const Feature& f : site.features) {
    if (f.kind == FeatureKind::house) ground.houses.push_back(f.points);
    if (f.kind == FeatureKind::no_dig) ground.planted.push_back(f.points);
    if (f.kind == FeatureKind::tree && !f.points.empty())
      ground.trunks.push_back({f.points.front(), f.trunk_diameter / 2});
  }
  ground.lot = lot_ring(site);
  return ground;
}

bool tape_is_free(const TapeGround& ground, Point a, Point b) {
  return tape_is_free(ground.houses, a, b) &&
         std::none_of(ground.trunks.begin(), ground.trunks.end(), [&](const Trunk& t) {
           return distance_to_segment(t.at, a, b) < t.radius - kSameStake;
         });
}

bool stays_on_lot(const TapeGround& ground, Point a, Point b) {
  if (ground.lot.size() < 3 || distance(a, b) < kSamePlace) return true;
  return !any_middle(ground.lot, a, b,
                     [&](Point p) { return !strictly_inside(ground.lot, p) && !on_outline(ground.lot, p); });
}

bool stays_off_planted(const TapeGround& ground, Point a, Point b) {
  return tape_is_free(ground.planted, a, b);
}

double cut_angle(Point at, Point first, Point second) {
  const Point a = first - at, b = second - at;
  return std::atan2(std::abs(cross(a, b)), std::abs(dot(a, b)));
}

double expected_error(Point at, Point first, Point second) {
  const double along = std::hypot(tape_error(distance(at, first)), tape_error(distance(at, second)));
  return along / std::max(1e-9, std::sin(cut_angle(at, first, second)));
}

TapeWay tape_way(const TapeGround& ground, Point a, Point b) {
  return {stays_on_lot(ground, a, b), stays_off_planted(ground, a, b)};
}

double tape_worth(Point at, Point first, Point second, const TapeWay& a, const TapeWay& b) {
  return expected_error(at, first, second) * (a.on_lot && b.on_lot ? 1 : kOffLotWorse) *
         (a.off_planted && b.off_planted ? 1 : kPlantedWorse);
}

}  // namespace underlawn
