// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/chords.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace underlawn {

namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kSameStep = 1e-6;    // of a step: chords this alike are of one arc
constexpr double kSameTurn = 1e-6;    // rad
constexpr double kLargestTurn = 0.3;  // rad from chord to chord: more is a drawn corner

double turn_at(const Polyline& line, std::size_t i) {
  const Point u = line[i] - line[i - 1], v = line[i + 1] - line[i];
  return std::atan2(cross(u, v), dot(u, v));
}

// How many chords from `from` on belong to one arc; 0 where none does.
std::size_t chords_of_arc(const Polyline& line, std::size_t from) {
  if (from + 3 >= line.size()) return 0;
  const double step = distance(line[from], line[from + 1]);
  const double turn = turn_at(line, from + 1);
  if (!(step > 0) || std::abs(turn) < 1e-5 || std::abs(turn) > kLargestTurn) return 0;
  std::size_t to = from + 1;
  while (to + 1 < line.size() && std::abs(turn_at(line, to) - turn) < kSameTurn + 1e-4 * std::abs(turn) &&
         std::abs(distance(line[to], line[to + 1]) - step) < kSameStep * step + 1e-9)
    ++to;
  return to - from >= 3 ? to - from : 0;
}

}  // namespace

double chord_angle(double radius, double tolerance) {
  const double most = kPi / 2, least = kPi / 1800;
  if (!(radius > tolerance)) return most;
  return std::clamp(2 * std::acos(1 - tolerance / radius), least, most);
}

Polyline arc_points(Point centre, double radius, double start, double sweep, double tolerance) {
  const double chords = std::ceil(std::abs(sweep) / chord_angle(radius, tolerance) - 1e-9);
  const int n = static_cast<int>(std::clamp(chords, 1.0, 3600.0));
  Polyline out;
  for (int i = 1; i <= n; ++i) out.push_back(centre + radius * direction(start + sweep * i / n));
  return out;
}

Polyline bulge_points(Point a, Point b, double bulge, double tolerance) {
  const double chord = distance(a, b);
  if (!std::isfinite(bulge) || std::abs(bulge) < 1e-9 || !(chord > 0)) return {b};
  const double sweep = 4 * std::atan(bulge);
  const double radius = chord * (1 + bulge * bulge) / (4 * std::abs(bulge));
  // The centre lies to the left of a -> b by chord/2 / tan(sweep/2).
  const double off = chord * (1 - bulge * bulge) / (4 * bulge);
  const Point centre = a + 0.5 * (b - a) + off * left_normal(unit(b - a));
  const double start = std::atan2(a.y - centre.y, a.x - centre.x);
  Polyline out = arc_points(centre, radius, start, sweep, tolerance);
  out.back() = b;
  return out;
}

Polyline with_fewer_chords(const Polyline& line, double tolerance) {
  Polyline out;
  for (std::size_t i = 0; i < line.size();) {
    out.push_back(line[i]);
    const std::size_t chords = chords_of_arc(line, i);
    if (chords == 0) {
      ++i;
      continue;
    }
    const double turn = std::abs(turn_at(line, i + 1));
    const double radius = distance(line[i], line[i + 1]) / (2 * std::sin(turn / 2));
    const double together = std::max(1.0, std::floor(chord_angle(radius, tolerance) / turn + 1e-9));
    const double pieces = std::ceil(static_cast<double>(chords) / together);
    // Whole steps of the fine chords, so that every point kept is one that was there.
    const auto parts = static_cast<std::size_t>(pieces);
    for (std::size_t k = 1; k < parts; ++k)
      out.push_back(line[i + static_cast<std::size_t>(std::lround(static_cast<double>(k) *
                                                                  static_cast<double>(chords) / pieces))]);
    i += chords;
  }
  return out;
}

}  // namespace underlawn
