// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/coil.h"

#include <algorithm>
#include <boost/math/special_functions/ellint_2.hpp>
#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <numbers>

#include "base/quantity.h"
#include "base/say.h"
#include "field/straight.h"

namespace underlawn {

namespace {

using std::numbers::pi;

std::string shown(const CoilRequest& r, double value) {
  return print_quantity(Quantity::length, value, r.units, Fineness::fine);
}

Trouble trouble(const CoilRequest& r, std::string code, std::string thing, double value, std::string bound,
                std::string advice) {
  return {std::move(code), std::move(thing), shown(r, value), std::move(bound), std::move(advice)};
}

std::optional<Trouble> out_of_bounds(const CoilRequest& r, std::string_view thing, double value,
                                     double most) {
  if (value > 0 && value <= most) return std::nullopt;  // false for what is not a number
  std::string code(thing);
  std::replace(code.begin(), code.end(), ' ', '_');
  return trouble(r, code + "_out_of_bounds", translated(thing), value,
                 say("more than {} and at most {}", shown(r, 0), shown(r, most)),
                 say("Enter a length between these bounds."));
}

std::optional<Trouble> bad_bounds(const CoilRequest& r) {
  if (auto t = out_of_bounds(r, mark("loop diameter"), r.loop_diameter, kLargestLoop)) return t;
  if (auto t = out_of_bounds(r, mark("pipe diameter"), r.pipe_diameter, kLargestLoop)) return t;
  if (r.unknown != CoilUnknown::coil_length)
    if (auto t = out_of_bounds(r, mark("coil length"), r.coil_length, kLongestCoil)) return t;
  if (r.unknown != CoilUnknown::trench_length)
    if (auto t = out_of_bounds(r, mark("trench length"), r.trench_length, kLongestTrench)) return t;
  return std::nullopt;
}

std::optional<Trouble> bad_trench(const CoilRequest& r) {
  if (r.unknown == CoilUnknown::trench_length || r.trench_length > r.loop_diameter) return std::nullopt;
  return trouble(r, "trench_shorter_than_loop", say("trench length"), r.trench_length,
                 say("more than the loop diameter, {}", shown(r, r.loop_diameter)),
                 say("Lengthen the trench or make smaller loops."));
}

double widest_pitch(const CoilRequest& r) {
  return pi * r.loop_diameter;
}

std::optional<Trouble> bad_pitch(const CoilRequest& r) {
  if (r.unknown == CoilUnknown::pitch) return std::nullopt;
  if (!(r.pitch > r.pipe_diameter))
    return trouble(r, "pitch_below_pipe", say("pitch"), r.pitch,
                   say("more than the pipe's diameter, {}", shown(r, r.pipe_diameter)),
                   say("Spread the loops farther."));
  if (!(r.pitch < widest_pitch(r)))
    return trouble(r, "pitch_too_wide", say("pitch"), r.pitch,
                   say("less than {} (pi times the loop)", shown(r, widest_pitch(r))),
                   say("Bring the loops closer; at this pitch the pipe makes none."));
  return std::nullopt;
}

Coil coil_of(double diameter, double pitch, double loops) {
  Coil c;
  c.loop_diameter = diameter;
  c.pitch = pitch;
  c.loops = loops;
  c.trench_length = loops * pitch + diameter;
  c.loop_pipe = loops * loop_length(diameter, pitch);
  c.return_pipe = c.trench_length;
  c.coil_length = c.loop_pipe + c.return_pipe;
  return c;
}

// N = (C - D)/(L + p), from C = N L + N p + D.
Result<Coil> with_trench_length(const CoilRequest& r) {
  const double loops = (r.coil_length - r.loop_diameter) / (loop_length(r.loop_diameter, r.pitch) + r.pitch);
  if (!(loops > 0))
    return refuse(trouble(r, "coil_too_short", say("coil length"), r.coil_length,
                          say("more than the loop diameter, {}", shown(r, r.loop_diameter)),
                          say("Lengthen the coil.")));
  Coil c = coil_of(r.loop_diameter, r.pitch, loops);
  if (c.trench_length > kLongestTrench)
    return refuse(trouble(r, "trench_length_out_of_bounds", say("trench length that the coil needs"),
                          c.trench_length, say("at most {}", shown(r, kLongestTrench)),
                          say("Shorten the coil or bring the loops closer.")));
  c.coil_length = r.coil_length;
  return c;
}

Result<Coil> with_coil_length(const CoilRequest& r) {
  Coil c = coil_of(r.loop_diameter, r.pitch, (r.trench_length - r.loop_diameter) / r.pitch);
  if (c.coil_length > kLongestCoil)
    return refuse(trouble(r, "coil_length_out_of_bounds", say("coil length that fills the trench"),
                          c.coil_length, say("at most {}", shown(r, kLongestCoil)),
                          say("Shorten the trench or spread the loops.")));
  c.trench_length = c.return_pipe = r.trench_length;
  return c;
}

double coil_length_at(const CoilRequest& r, double pitch) {
  return r.trench_length + (r.trench_length - r.loop_diameter) / pitch * loop_length(r.loop_diameter, pitch);
}

// Coil length falls as pitch grows (loop_length(p)/p falls for every p), so there is one root between the
// bounds.
double root_pitch(const CoilRequest& r) {
  std::uintmax_t steps = 100;
  const auto excess = [&](double pitch) { return coil_length_at(r, pitch) / r.coil_length - 1; };
  const auto [low, high] = boost::math::tools::toms748_solve(
      excess, r.pipe_diameter, widest_pitch(r), boost::math::tools::eps_tolerance<double>(50), steps);
  return (low + high) / 2;
}

Result<Coil> with_pitch(const CoilRequest& r) {
  const double shortest = coil_length_at(r, widest_pitch(r));
  const double longest = coil_length_at(r, r.pipe_diameter);
  if (!(r.coil_length > shortest))
    return refuse(trouble(r, "coil_too_short", say("coil length"), r.coil_length,
                          say("more than {} to loop to the trench's end and run back", shown(r, shortest)),
                          say("Lengthen the coil or shorten the trench.")));
  if (!(r.coil_length < longest))
    return refuse(trouble(r, "coil_too_long", say("coil length"), r.coil_length,
                          say("less than {}, where the loops lie a pipe's width apart", shown(r, longest)),
                          say("Shorten the coil or lengthen the trench.")));
  const double pitch = root_pitch(r);
  Coil c = coil_of(r.loop_diameter, pitch, (r.trench_length - r.loop_diameter) / pitch);
  c.trench_length = c.return_pipe = r.trench_length;
  c.coil_length = r.coil_length;
  return c;
}

}  // namespace

std::string pattern_name(CoilPattern pattern) {
  switch (pattern) {
    case CoilPattern::flat_coil:
      return say("flat coil");
    case CoilPattern::upright_coil:
      return say("upright coil");
    case CoilPattern::single_pipe:
      return say("single pipe, its return above it");
    case CoilPattern::two_pipes:
      return say("two pipes side by side");
    case CoilPattern::four_pipes:
      return say("four pipes on two levels");
    case CoilPattern::six_pipes:
      return say("six pipes on three levels");
  }
  return say("unknown");
}

double loop_length(double loop_diameter, double pitch) {
  const double radius = loop_diameter / 2;
  const double advance = pitch / (2 * pi);
  const double sum = radius + advance;
  if (!(sum > 0)) return 0;
  return 4 * sum * boost::math::ellint_2(std::min(1.0, 2 * std::sqrt(radius * advance) / sum));
}

double loop_length_by_sum(double loop_diameter, double pitch) {
  return pi * loop_diameter + pitch;
}

namespace {

Result<Coil> solve_loops(const CoilRequest& r) {
  if (auto t = bad_bounds(r)) return refuse(*t);
  if (r.pipe_diameter >= widest_pitch(r))
    return refuse(trouble(r, "loop_smaller_than_pipe", say("loop diameter"), r.loop_diameter,
                          say("wide enough for a pipe of {}", shown(r, r.pipe_diameter)),
                          say("Make larger loops.")));
  if (auto t = bad_trench(r)) return refuse(*t);
  if (auto t = bad_pitch(r)) return refuse(*t);
  switch (r.unknown) {
    case CoilUnknown::pitch:
      return with_pitch(r);
    case CoilUnknown::coil_length:
      return with_coil_length(r);
    case CoilUnknown::trench_length:
      return with_trench_length(r);
  }
  return refuse({"coil_unknown_unnamed", say("unknown of the coil"), say_as("of things chosen", "none"),
                 say("pitch, coil length or trench length"),
                 say("Choose which of the three follows from the other two.")});
}

}  // namespace

Result<Coil> solve_coil(const CoilRequest& r) {
  if (is_straight(r.pattern)) return solve_straight(r);
  Result<Coil> coil = solve_loops(r);
  if (coil && r.pattern == CoilPattern::upright_coil) {
    coil->pattern = r.pattern;
    coil->return_on_top = r.return_on_top;
  }
  return coil;
}

}  // namespace underlawn
