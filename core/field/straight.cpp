// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/straight.h"

#include <algorithm>
#include <cmath>

#include "base/say.h"

namespace underlawn {

namespace {

Trouble trouble(const CoilRequest& r, std::string code, std::string thing, double value, std::string bound,
                std::string advice) {
  return {std::move(code), std::move(thing), print_quantity(Quantity::length, value, r.units, Fineness::fine),
          std::move(bound), std::move(advice)};
}

// More than `least` and at most `most`; false for what is not a number.
std::optional<Trouble> out_of_bounds(const CoilRequest& r, std::string_view thing, double value, double least,
                                     double most, std::string advice) {
  if (value > least && value <= most) return std::nullopt;
  std::string code(thing);
  std::replace(code.begin(), code.end(), ' ', '_');
  const auto shown = [&](double v) { return print_quantity(Quantity::length, v, r.units, Fineness::fine); };
  return trouble(r, code + "_out_of_bounds", translated(thing), value,
                 say("more than {} and at most {}", shown(least), shown(most)), std::move(advice));
}

std::optional<Trouble> bad_distances(const CoilRequest& r) {
  const std::string apart = say("Lay the pipes farther apart than they are thick.");
  if (auto t = out_of_bounds(r, mark("pipe diameter"), r.pipe_diameter, 0, kLargestLoop,
                             say("Choose another pipe.")))
    return t;
  if (pipe_levels(r.pattern) > 1)
    if (auto t =
            out_of_bounds(r, mark("level distance"), r.level_distance, r.pipe_diameter, kLargestLoop, apart))
      return t;
  if (pipe_sides(r.pattern) > 1)
    if (auto t =
            out_of_bounds(r, mark("side distance"), r.side_distance, r.pipe_diameter, kLargestLoop, apart))
      return t;
  return std::nullopt;
}

Coil bare_pattern(const CoilRequest& r) {
  Coil c;
  c.loop_diameter = c.pitch = 0;
  c.pattern = r.pattern;
  c.level_distance = pipe_levels(r.pattern) > 1 ? r.level_distance : 0;
  c.side_distance = pipe_sides(r.pattern) > 1 ? r.side_distance : 0;
  return c;
}

}  // namespace

int pipe_levels(CoilPattern pattern) {
  switch (pattern) {
    case CoilPattern::two_pipes:
      return 1;
    case CoilPattern::single_pipe:
    case CoilPattern::four_pipes:
      return 2;
    case CoilPattern::six_pipes:
      return 3;
    default:
      return 0;
  }
}

int pipe_sides(CoilPattern pattern) {
  if (!is_straight(pattern)) return 0;
  return pattern == CoilPattern::single_pipe ? 1 : 2;
}

std::vector<StraightPipe> straight_pipes(const Coil& coil) {
  std::vector<StraightPipe> pipes;
  double side = coil.side_distance / 2;
  for (int level = 0; level < pipe_levels(coil.pattern); ++level) {
    pipes.push_back({side, level * coil.level_distance});
    if (pipe_sides(coil.pattern) < 2) continue;
    side = -side;  // across to the other side at the far end, straight up there at the head
    pipes.push_back({side, level * coil.level_distance});
  }
  return pipes;
}

double pipe_in_turns(const Coil& coil) {
  const auto pipes = straight_pipes(coil);
  double sum = 0;
  for (std::size_t i = 1; i < pipes.size(); ++i)
    sum += std::hypot(pipes[i].across - pipes[i - 1].across, pipes[i].up - pipes[i - 1].up);
  return sum;
}

Result<Coil> solve_straight(const CoilRequest& r) {
  if (auto t = bad_distances(r)) return refuse(*t);
  Coil c = bare_pattern(r);
  const auto pipes = static_cast<double>(straight_pipes(c).size());
  const double turns = pipe_in_turns(c);
  if (follows_in(r.pattern, r.unknown) == CoilUnknown::coil_length) {
    if (auto t = out_of_bounds(r, mark("trench length"), r.trench_length, 0, kLongestTrench,
                               say("Enter a length between these bounds.")))
      return refuse(*t);
    c.trench_length = r.trench_length;
    c.coil_length = pipes * c.trench_length + turns;
    return c;
  }
  if (auto t = out_of_bounds(r, mark("coil length"), r.coil_length, turns,
                             std::min(kLongestCoil, pipes * kLongestTrench + turns),
                             say("Enter a length that reaches to the trench's end and back.")))
    return refuse(*t);
  c.coil_length = r.coil_length;
  c.trench_length = (r.coil_length - turns) / pipes;
  return c;
}

Polyline straight_path(const Coil& coil) {
  Polyline path;
  bool out = true;
  for (const StraightPipe& pipe : straight_pipes(coil)) {
    path.push_back({out ? 0 : coil.trench_length, pipe.across});
    path.push_back({out ? coil.trench_length : 0, pipe.across});
    out = !out;
  }
  return path;
}

}  // namespace underlawn
