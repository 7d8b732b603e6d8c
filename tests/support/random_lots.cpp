// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/random_lots.h"

#include <algorithm>
#include <numbers>
#include <random>

namespace underlawn::sample {

namespace {

class Maker {
 public:
  explicit Maker(std::uint64_t seed) : random_(seed) {}

  RandomLot make() {
    width_ = between(20, 75);
    depth_ = between(25, 110);
    outline();
    house();
    septic();
    trees();
    lines();
    areas();
    turn();
    wishes();
    return std::move(lot_);
  }

 private:
  // Written out, since the standard's distributions differ between libraries.
  double share() { return static_cast<double>(random_() >> 11) / 9007199254740992.0; }
  double between(double low, double high) {
    const double v = low + share() * (high - low);
    return snapped_ ? std::round(v) : v;
  }
  bool chance(double p) { return share() < p; }
  int whole(int low, int high) { return low + static_cast<int>(share() * (high - low + 1)); }

  void outline() {
    snapped_ = chance(0.4);
    const double w = width_, d = depth_;
    Ring ring;
    switch (whole(0, 4)) {
      case 0:
        ring = {{0, 0}, {w, 0}, {w, d}, {0, d}};
        break;
      case 1:
        ring = {{between(0, w / 4), 0}, {w - between(0, w / 4), 0}, {w, d}, {0, d - between(0, d / 4)}};
        break;
      case 2: {
        const double a = between(w / 4, 3 * w / 4), b = between(d / 4, 3 * d / 4);
        ring = {{0, 0}, {w, 0}, {w, b}, {a, b}, {a, d}, {0, d}};
        break;
      }
      case 3:
        ring = {{0, 0}, {w, 0}, {w, d - 8}, {w - 8, d}, {w / 2, d}, {w / 2, d}, {0, d}};
        break;
      default:
        for (int i = 0, n = whole(5, 14); i < n; ++i) {
          const double at = 2 * std::numbers::pi * (i + 0.6 * share()) / n, r = 0.6 + 0.4 * share();
          ring.push_back({w / 2 * (1 + r * std::cos(at)), d / 2 * (1 + r * std::sin(at))});
        }
    }
    if (chance(0.3)) std::reverse(ring.begin(), ring.end());
    const double all = between(0, 4);
    for (Point p : ring) lot_.site.lot.push_back({p, chance(0.3) ? between(0, 8) : all});
  }

  Feature& add(FeatureKind kind, std::vector<Point> points) {
    Feature f;
    f.id = static_cast<int>(lot_.site.features.size()) + 1;
    f.kind = kind;
    f.points = std::move(points);
    if (chance(0.2)) f.trench_clearance = between(0, 6);
    if (chance(0.2)) f.run_clearance = between(0, 3);
    lot_.site.features.push_back(std::move(f));
    return lot_.site.features.back();
  }
  static Ring box(Point low, double w, double d) {
    return {low, {low.x + w, low.y}, {low.x + w, low.y + d}, {low.x, low.y + d}};
  }
  Point anywhere() { return {between(-2, width_ + 2), between(-2, depth_ + 2)}; }

  void house() {
    if (chance(0.05)) return;
    const double w = between(8, 18), d = between(7, 13);
    const Point low = {between(2, std::max(3.0, width_ - w - 2)), between(3, std::max(4.0, depth_ / 3))};
    Ring ring = box(low, w, d);
    if (chance(0.3))
      ring = {low,
              {low.x + w, low.y},
              {low.x + w, low.y + d / 2},
              {low.x + w / 2, low.y + d / 2},
              {low.x + w / 2, low.y + d},
              {low.x, low.y + d}};
    const Feature& house = add(FeatureKind::house, ring);
    if (chance(0.05)) return;
    const auto side = static_cast<std::size_t>(whole(0, static_cast<int>(ring.size()) - 1));
    const Point a = ring[side], b = ring[(side + 1) % ring.size()];
    lot_.site.entry = EntryPoint{house.id, a + (0.15 + 0.7 * share()) * (b - a)};
  }

  void septic() {
    if (chance(0.5)) {
      add(FeatureKind::septic_tank, box(anywhere(), 2, 3)).trench_clearance = between(1, 8);
      add(FeatureKind::drain_field, box(anywhere(), between(4, 10), between(4, 9))).trench_clearance =
          between(1, 8);
    }
    if (chance(0.2)) add(FeatureKind::reserve_field, box(anywhere(), between(4, 10), between(4, 9)));
    if (chance(0.4)) add(FeatureKind::well, {anywhere()});
  }

  void trees() {
    for (int i = whole(0, 4); i > 0; --i)
      add(FeatureKind::tree, {anywhere()}).trunk_diameter = 0.1 + 0.3 * share();
  }

  void lines() {
    for (int i = whole(0, 3); i > 0; --i) {
      std::vector<Point> line = {anywhere(), anywhere()};
      if (chance(0.5)) line = {{0, between(0, depth_)}, {width_, between(0, depth_)}};
      if (chance(0.3)) line.push_back(anywhere());
      Feature& f = add(FeatureKind::utility, line);
      f.utility = static_cast<UtilityKind>(whole(0, 5));
      f.may_cross = chance(0.8);
      if (chance(0.5)) f.trench_clearance = between(0, 3);
    }
  }

  void areas() {
    if (chance(0.5))
      add(FeatureKind::drive, box({between(0, width_), 0}, 4, between(5, 20))).may_cross = chance(0.8);
    if (chance(0.2))
      add(FeatureKind::easement, box({0, between(0, depth_)}, width_, 3)).may_cross = chance(0.7);
    if (chance(0.3)) {
      const Point at = anywhere();
      add(FeatureKind::no_dig, {at, at + Point{6, 2}, at + Point{3, 3}, at + Point{4, 8}});
    }
  }

  void turn() {
    if (chance(0.5)) return;
    const double angle = 2 * std::numbers::pi * share();
    const Point shift = {between(-500, 500), between(-500, 500)};
    const auto move = [&](Point& p) { p = rotated(p, angle) + shift; };
    for (LotCorner& c : lot_.site.lot) move(c.at);
    for (Feature& f : lot_.site.features)
      for (Point& p : f.points) move(p);
    if (lot_.site.entry) move(lot_.site.entry->at);
  }

  void wishes() {
    snapped_ = false;
    Wishes& w = lot_.wishes;
    w.circuits = whole(1, 7);
    w.trench_length = between(8, 32);
    w.spacing = between(1.2, 4.5);
    w.trench_width = between(0.3, 1.1);
    w.end_gap = between(0.3, 2.5);
    w.run_width = between(0.3, 0.8);
    w.coil_in_run = chance(0.8);
  }

  std::mt19937_64 random_;
  bool snapped_ = false;
  double width_ = 0, depth_ = 0;
  RandomLot lot_;
};

}  // namespace

RandomLot random_lot(std::uint64_t seed) {
  return Maker(seed).make();
}

}  // namespace underlawn::sample
