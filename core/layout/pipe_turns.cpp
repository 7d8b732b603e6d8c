// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/pipe_turns.h"

#include <algorithm>
#include <cmath>

namespace underlawn {

namespace {

double half_turn_at(const Polyline& line, std::size_t i) {
  const Point u = line[i] - line[i - 1], v = line[i + 1] - line[i];
  return std::abs(std::atan2(cross(u, v), dot(u, v))) / 2;
}

}  // namespace

int turns_too_tight(const Polyline& line, double width, const PipeSize& pipe) {
  const double radius = pipe.least_bend_radius(), room = width - pipe.outside_diameter;
  int tight = 0;
  double taken = 0;  // of the leg before, by the bend at its start
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    const double half = half_turn_at(line, i), tangent = radius * std::tan(std::min(half, 1.55));
    const bool sharp = radius * (1 - std::cos(half)) > room;
    const bool close =
        taken + tangent > distance(line[i - 1], line[i]) || tangent > distance(line[i], line[i + 1]);
    tight += sharp || close;
    taken = tangent;
  }
  return tight;
}

}  // namespace underlawn
