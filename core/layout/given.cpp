// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/given.h"

#include <cmath>

#include "pipe/pipe_size.h"

namespace underlawn {

namespace {

constexpr double kFarthest = 1e5;  // m from the origin
constexpr double kDeepest = 10;    // m

Result<Coil> coil_in(const GivenTrench& t, const Wishes& wishes, const Coil& usual) {
  const double length = distance(t.head, t.end);
  if (std::abs(length - usual.trench_length) < 1e-9 && t.coil_length == 0) return usual;
  CoilRequest r;
  r.unknown = t.coil_length > 0 ? CoilUnknown::pitch : CoilUnknown::coil_length;
  r.loop_diameter = usual.loop_diameter;
  r.pitch = usual.pitch;
  r.coil_length = t.coil_length;
  r.trench_length = length;
  if (const auto pipe = find_pipe(wishes.pipe)) r.pipe_diameter = pipe->outside_diameter;
  r.pattern = usual.pattern;
  r.level_distance = wishes.level_distance;
  r.side_distance = wishes.side_distance;
  r.return_on_top = wishes.return_on_top;
  return solve_coil(r);
}

bool is_place(Point p) {
  return std::abs(p.x) <= kFarthest && std::abs(p.y) <= kFarthest;
}

Trouble about(int number, Trouble t) {
  t.thing = "given trench " + std::to_string(number) + ", " + t.thing;
  return t;
}

Result<Trench> given_trench(const GivenTrench& g, int number, const Wishes& wishes, const Coil& usual) {
  if (!is_place(g.head) || !is_place(g.end) || !(g.depth >= 0 && g.depth <= kDeepest) ||
      !(g.coil_length >= 0 && g.coil_length <= kLongestCoil))
    return refuse({"given_trench", "given trench " + std::to_string(number), "a number beyond its bound",
                   "ends within 100 km, depth 0 to 10 m, pipe 0 to 20 000 m",
                   "Enter its ends, depth and pipe again."});
  const auto coil = coil_in(g, wishes, usual);
  if (!coil) return refuse(about(number, coil.error()));
  Trench t;
  t.number = number;
  t.head = g.head;
  t.end = g.end;
  t.width = wishes.trench_width;
  t.depth = g.depth > 0 ? g.depth : wishes.trench_depth;
  t.coil = *coil;
  return t;
}

}  // namespace

Result<std::vector<Trench>> given_trenches(const Wishes& wishes, const Coil& usual) {
  std::vector<Trench> all;
  for (const GivenTrench& g : wishes.given) {
    auto t = given_trench(g, static_cast<int>(all.size()) + 1, wishes, usual);
    if (!t) return refuse(t.error());
    all.push_back(std::move(*t));
  }
  return all;
}

}  // namespace underlawn
