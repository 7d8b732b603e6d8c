// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/given.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/say.h"
#include "pipe/pipe_size.h"
#include "plane/strip.h"

namespace underlawn {

Polyline line_of(const GivenTrench& given) {
  Polyline line = {given.head};
  line.insert(line.end(), given.bends.begin(), given.bends.end());
  line.push_back(given.end);
  return line;
}

namespace {

constexpr double kFarthest = 1e5;   // m from the origin
constexpr double kDeepest = 10;     // m
constexpr double kLeastLeg = 0.01;  // m, between points of a trench that bends

Result<Coil> coil_in(const GivenTrench& t, const Wishes& wishes, const Coil& usual) {
  const double length = underlawn::length(line_of(t));
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

bool repeats(const Polyline& line) {
  for (std::size_t i = 1; i < line.size(); ++i)
    if (distance(line[i - 1], line[i]) < kLeastLeg) return true;
  return false;
}

// Where the line turns right back on itself no trench can be dug.
bool turns_back(const Polyline& line) {
  for (std::size_t i = 1; i + 1 < line.size(); ++i)
    if (turn_at(line, i) > kSharpestTurn) return true;
  return false;
}

std::optional<Trouble> bends_trouble(const GivenTrench& g, const std::string& name) {
  if (g.bends.empty()) return std::nullopt;
  if (!std::all_of(g.bends.begin(), g.bends.end(), is_place))
    return Trouble{"given_trench", say("{}, a bend", name), say("a number beyond its bound"),
                   say("within 100 km"), say("Enter its bends again.")};
  if (repeats(line_of(g)))
    return Trouble{"given_trench_bend_repeats", say("{}, a bend", name),
                   say("the place of the point before it"), say("1 cm or more from it"),
                   say("Leave the bend out.")};
  if (turns_back(line_of(g)))
    return Trouble{"given_trench_turns_back", say("{}, a bend", name), say("back the way it came"),
                   say("a turn of 175 degrees or less"), say("Move the bend, or make two trenches of it.")};
  return std::nullopt;
}

Trouble about(const std::string& name, Trouble t) {
  t.thing = say("{}, {}", name, t.thing);
  return t;
}

Result<Trench> trench_of(const GivenTrench& g, const std::string& name, const Wishes& wishes,
                         const Coil& usual) {
  if (!is_place(g.head) || !is_place(g.end) || !(g.depth >= 0 && g.depth <= kDeepest) ||
      !(g.coil_length >= 0 && g.coil_length <= kLongestCoil))
    return refuse({"given_trench", name, say("a number beyond its bound"),
                   say("ends within 100 km, depth 0 to 10 m, pipe 0 to 20 000 m"),
                   say("Enter its ends, depth and pipe again.")});
  if (auto trouble = bends_trouble(g, name)) return refuse(*trouble);
  const auto coil = coil_in(g, wishes, usual);
  if (!coil) return refuse(about(name, coil.error()));
  Trench t;
  t.head = g.head;
  t.end = g.end;
  t.bends = g.bends;
  t.width = wishes.trench_width;
  t.depth = g.depth > 0 ? g.depth : wishes.trench_depth;
  t.coil = *coil;
  return t;
}

}  // namespace

Result<Trench> locked_trench(const Wishes& wishes, std::size_t index, const Coil& usual) {
  auto t = trench_of(wishes.locked[index], say("locked trench {}", index + 1), wishes, usual);
  if (t) t->number = 1;
  return t;
}

Result<std::vector<Trench>> given_trenches(const Wishes& wishes, const Coil& usual) {
  std::vector<Trench> all;
  for (const GivenTrench& g : wishes.given) {
    auto t = trench_of(g, say("given trench {}", all.size() + 1), wishes, usual);
    if (!t) return refuse(t.error());
    t->number = static_cast<int>(all.size()) + 1;
    all.push_back(std::move(*t));
  }
  return all;
}

}  // namespace underlawn
