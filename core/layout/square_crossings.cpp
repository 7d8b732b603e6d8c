// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/square_crossings.h"

#include <cmath>

#include "layout/quick_distance.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

constexpr double kNearlySquare = 1.3;  // rad: 75 degrees
constexpr double kEndRoom = 0.3;       // m of leg left before and after the bends
constexpr int kNarrowings = 60;

double angle_between(Point u, Point v) {
  return std::atan2(std::abs(cross(u, v)), std::abs(dot(u, v)));
}

double hand_dug(double angle, const Wishes& w) {
  return kHandDig * 2 * (kToleranceZone + w.run_width / 2) / std::max(0.05, std::sin(angle));
}

}  // namespace

SquareCrossing squared(const Polyline& line, std::size_t leg, const Segment& utility, const Wishes& w) {
  SquareCrossing out;
  const Point a = line[leg], b = line[leg + 1];
  if (!quick_cross({a, b}, utility)) return out;
  const Point along = unit(utility.b - utility.a), n = left_normal(along);
  out.angle = angle_between(b - a, along);
  const double side = dot(b - a, n) > 0 ? 1 : -1;
  const double from = side * dot(utility.a - a, n), to = side * dot(b - utility.a, n);
  if (out.angle > kNearlySquare || std::min(from, to) < kSquareHalf + kEndRoom) return out;
  const auto bent = [&](double at) {
    const Point q = utility.a + at * along;
    return Polyline{a, q - (side * kSquareHalf) * n, q + (side * kSquareHalf) * n, b};
  };
  // The length is convex in the place of the crossing.
  const double at_a = dot(a - utility.a, along), at_b = dot(b - utility.a, along);
  double low = std::max(0.0, std::min(at_a, at_b)),
         high = std::min(distance(utility.a, utility.b), std::max(at_a, at_b));
  for (int i = 0; i < kNarrowings && high - low > 1e-4; ++i) {
    const double third = (high - low) / 3;
    if (length(bent(low + third)) > length(bent(high - third)))
      low += third;
    else
      high -= third;
  }
  const Polyline way = bent((low + high) / 2);
  out.longer = length(way) - distance(a, b);
  out.saved = hand_dug(out.angle, w) - hand_dug(std::numbers::pi / 2, w) - out.longer - 2 * kBend;
  out.line.assign(line.begin(), line.begin() + static_cast<std::ptrdiff_t>(leg));
  out.line.insert(out.line.end(), way.begin(), way.end());
  out.line.insert(out.line.end(), line.begin() + static_cast<std::ptrdiff_t>(leg) + 2, line.end());
  return out;
}

}  // namespace underlawn
