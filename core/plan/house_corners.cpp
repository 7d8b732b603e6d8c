// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <numbers>

#include "plan/stake_out.h"

namespace underlawn {

namespace {

using std::numbers::pi;

constexpr double kLeastTurn = pi / 18;  // 10 degrees: less is no corner that a crew would find

double twice_signed_area(const Ring& ring) {
  double sum = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) sum += cross(ring[i], ring[(i + 1) % ring.size()]);
  return sum;
}

Ring without_repeats(const Ring& ring) {
  Ring kept;
  for (Point p : ring)
    if (kept.empty() || distance(kept.back(), p) > kSameStake) kept.push_back(p);
  while (kept.size() > 1 && distance(kept.front(), kept.back()) <= kSameStake) kept.pop_back();
  return kept;
}

double turn(Point before, Point at, Point after) {
  const Point in = at - before, out = after - at;
  return std::abs(std::atan2(cross(in, out), dot(in, out)));
}

Ring true_corners(const Ring& drawn) {
  Ring ring = without_repeats(drawn);
  if (twice_signed_area(ring) < 0) std::reverse(ring.begin(), ring.end());
  Ring corners;
  const std::size_t n = ring.size();
  for (std::size_t i = 0; i < n; ++i)
    if (turn(ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]) >= kLeastTurn) corners.push_back(ring[i]);
  return corners;
}

// Ties go to the more southerly, so that a house turned 45 degrees still has one first corner.
void start_south_west(Ring& ring, double north) {
  const Point south_west = direction(north + 3 * pi / 4), south = direction(north + pi);
  const auto behind = [&](Point a, Point b) {
    const double gain = dot(b - a, south_west);
    return std::abs(gain) > kSameStake ? gain > 0 : dot(b - a, south) > kSameStake;
  };
  const auto first = std::max_element(ring.begin(), ring.end(), behind);
  std::rotate(ring.begin(), first, ring.end());
}

std::string letters(std::size_t index) {
  std::string tag(1, static_cast<char>('A' + index % 26));
  return index < 26 ? tag : letters(index / 26 - 1) + tag;
}

}  // namespace

std::vector<HouseCorner> house_corners(const Site& site) {
  std::vector<HouseCorner> corners;
  for (const Feature& f : site.features) {
    if (f.kind != FeatureKind::house) continue;
    Ring ring = true_corners(f.points);
    start_south_west(ring, site.north);
    for (Point p : ring) corners.push_back({letters(corners.size()), p});
  }
  return corners;
}

}  // namespace underlawn
