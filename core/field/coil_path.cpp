// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <boost/math/special_functions/ellint_2.hpp>
#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <numbers>

#include "field/coil.h"

namespace underlawn {

namespace {

using std::numbers::pi;

constexpr double kMostPoints = 1e7;  // of a path: more is nonsense, or a machine without memory

Point on_coil(const Coil& coil, double turned) {
  const double radius = coil.loop_diameter / 2;
  return {radius + coil.pitch * turned / (2 * pi) - radius * std::cos(turned), -radius * std::sin(turned)};
}

// Pipe in the curve from the head to angle `turned`: integral of sqrt(R^2 + c^2 + 2 R c sin u) du.
double pipe_until(const Coil& coil, double turned) {
  const double radius = coil.loop_diameter / 2, advance = coil.pitch / (2 * pi);
  const double sum = radius + advance;
  const double k = std::min(1.0, 2 * std::sqrt(radius * advance) / sum);
  return 2 * sum * (boost::math::ellint_2(k, turned / 2 - pi / 4) + boost::math::ellint_2(k, pi / 4));
}

// Where on the middle line the return turns, so that from the last loop's stop to there and straight back to
// the head it is just return_pipe long: |stop - turn| + turn = return_pipe.
Point turn_of_return(const Coil& coil, Point stop) {
  const double reach = coil.return_pipe;
  const double short_of_it = reach - stop.x;
  if (short_of_it < 1e-9 || dot(stop, stop) >= reach * reach) return stop;
  return {(reach * reach - dot(stop, stop)) / (2 * short_of_it), 0};
}

}  // namespace

double angle_at_stop(const Coil& coil) {
  std::uintmax_t steps = 100;
  const auto left = [&](double turned) { return pipe_until(coil, turned) - coil.loop_pipe; };
  const double low = std::max(0.0, 2 * pi * (coil.loops - 0.5)), high = 2 * pi * (coil.loops + 0.25);
  if (!(left(low) < 0 && left(high) > 0)) return 2 * pi * coil.loops;
  const auto [from, to] = boost::math::tools::toms748_solve(
      left, low, high, boost::math::tools::eps_tolerance<double>(48), steps);
  return (from + to) / 2;
}

Polyline coil_path(const Coil& coil, int points_per_loop) {
  const int density = std::max(4, points_per_loop);
  if (!(coil.loops > 0) || !(coil.loops * density < kMostPoints)) return {};
  const double turns = angle_at_stop(coil);
  const int steps = static_cast<int>(std::ceil(coil.loops * density));
  Polyline path;
  path.reserve(static_cast<std::size_t>(steps) + 3);
  for (int i = 0; i <= steps; ++i) path.push_back(on_coil(coil, turns * i / steps));
  path.push_back(turn_of_return(coil, path.back()));
  path.push_back({0, 0});
  return path;
}

}  // namespace underlawn
