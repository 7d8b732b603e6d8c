// SPDX-License-Identifier: GPL-3.0-or-later
#include <numbers>

#include "field/coil.h"

namespace underlawn {

namespace {

Point on_coil(const Coil& coil, double turn) {
  const double radius = coil.loop_diameter / 2;
  return {radius + coil.pitch * turn / (2 * std::numbers::pi) - radius * std::cos(turn),
          -radius * std::sin(turn)};
}

// Where on the middle line the return turns, so that from the last loop's stop to there and straight back to
// the head it is just return_pipe long: |stop - turn| + turn = return_pipe.
Point turn_of_return(const Coil& coil, Point stop) {
  const double reach = coil.return_pipe;
  const double short_of_it = reach - stop.x;
  if (short_of_it < 1e-9) return {reach, 0};
  return {(reach * reach - dot(stop, stop)) / (2 * short_of_it), 0};
}

}  // namespace

Polyline coil_path(const Coil& coil, int points_per_loop) {
  if (!(coil.loops > 0) || !(coil.loops * points_per_loop < 1e7)) return {};
  const double turns = 2 * std::numbers::pi * coil.loops;
  const int steps = static_cast<int>(std::ceil(coil.loops * std::max(4, points_per_loop)));
  Polyline path;
  path.reserve(static_cast<std::size_t>(steps) + 3);
  for (int i = 0; i <= steps; ++i) path.push_back(on_coil(coil, turns * i / steps));
  path.push_back(turn_of_return(coil, path.back()));
  path.push_back({0, 0});
  return path;
}

}  // namespace underlawn
