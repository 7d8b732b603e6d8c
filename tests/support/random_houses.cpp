// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/random_houses.h"

#include <algorithm>
#include <numbers>

namespace underlawn::sample {

namespace {

double between(std::mt19937& random, double low, double high) {
  return std::uniform_real_distribution<double>(low, high)(random);
}

}  // namespace

Ring random_house(std::mt19937& random, Point around) {
  const double w = between(random, 8, 20), d = between(random, 6, 15);
  Ring ring = {{0, 0}, {w, 0}, {w, d}, {0, d}};
  if (between(random, 0, 1) < 0.6) {
    const double x = w * between(random, 0.3, 0.7), y = d * between(random, 0.3, 0.7);
    ring = {{0, 0}, {w, 0}, {w, y}, {x, y}, {x, d}, {0, d}};
  }
  const double turn = between(random, 0, 2 * std::numbers::pi);
  for (Point& p : ring) p = around + rotated(p, turn);
  if (between(random, 0, 1) < 0.5) std::reverse(ring.begin(), ring.end());
  return ring;
}

Feature house_of(int id, Ring ring) {
  Feature f;
  f.id = id;
  f.kind = FeatureKind::house;
  f.points = std::move(ring);
  return f;
}

}  // namespace underlawn::sample
