// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "field/straight.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

void add_pitch_or_trench(Figures& all, const Wishes& w, const Coil& c) {
  if (w.unknown == CoilUnknown::pitch)
    derived(all, "coil.pitch", say("Pitch"), c.pitch, Q::length,
            {say("root of: coil length = (trench length - D)/p x loop length(D, p) + trench length"),
             {"coil.length", "coil.trench_length", "coil.loop_diameter"},
             ""});
  if (w.unknown == CoilUnknown::trench_length)
    derived(all, "coil.trench_length", say("Trench length"), c.trench_length, Q::length,
            {say("N p + D, where N = (coil length - D)/(loop length + p)"),
             {"coil.length", "coil.pitch", "coil.loop_diameter"},
             ""});
}

void add_one_loop(Figures& all, const Coil& c) {
  const std::vector<std::string> from = {"coil.loop_diameter", "coil.pitch"};
  derived(all, "coil.loop_length", say("Pipe in one loop"), loop_length(c.loop_diameter, c.pitch), Q::length,
          {say("4 (R + c) E(k) with R = D/2, c = p/2pi, k^2 = 4 R c/(R + c)^2"), from,
           say("arc length of the curve x = p th/2pi + (D/2) cos th, y = (D/2) sin th")});
  derived(all, "coil.loop_length_by_sum", say("The same by pi D + p, for comparison"),
          loop_length_by_sum(c.loop_diameter, c.pitch), Q::length,
          {say("pi D + p, often quoted, long by about p; used nowhere"), from,
           say("common practice, no source")});
}

// Keys of the distances that the pattern has.
std::vector<std::string> distances(const Coil& c) {
  std::vector<std::string> keys;
  if (c.side_distance > 0) keys.emplace_back("coil.side_distance");
  if (c.level_distance > 0) keys.emplace_back("coil.level_distance");
  return keys;
}

void add_straight(Figures& all, const Wishes& w, const Coil& c) {
  derived(all, "coil.pipes", say("Pipes in one trench"), static_cast<double>(straight_pipes(c).size()),
          Q::count, {say("table: sides x levels of the pattern"), {}, say("the pattern chosen")});
  derived(all, "coil.turns", say("Pipe in the turns at the trench's ends"), pipe_in_turns(c), Q::length,
          {say("side distance for each level, level distance between levels"), distances(c), ""});
  if (follows_in(w.pattern, w.unknown) == CoilUnknown::coil_length)
    derived(all, "coil.length", say("Pipe in one trench"), c.coil_length, Q::length,
            {say("pipes x trench length + turns"), {"coil.pipes", "coil.trench_length", "coil.turns"}, ""});
  else
    derived(all, "coil.trench_length", say("Trench length"), c.trench_length, Q::length,
            {say("(pipe in one trench - turns)/pipes"), {"coil.length", "coil.turns", "coil.pipes"}, ""});
  derived(all, "coil.pipe_per_trench", say("Pipe per length of trench"), c.coil_length / c.trench_length,
          Q::count, {say("pipe in one trench/trench length"), {"coil.length", "coil.trench_length"}, ""});
}

}  // namespace

void add_coil(Figures& all, const Plan& plan, const Outcome& outcome) {
  const Coil& c = outcome.coil;
  if (is_straight(c.pattern)) return add_straight(all, plan.wishes, c);
  add_pitch_or_trench(all, plan.wishes, c);
  add_one_loop(all, c);
  derived(all, "coil.loops", say("Loops"), c.loops, Q::count,
          {say("(trench length - D)/p"), {"coil.trench_length", "coil.loop_diameter", "coil.pitch"}, ""});
  derived(all, "coil.loop_pipe", say("Pipe in the loops"), c.loop_pipe, Q::length,
          {say("loops x pipe in one loop"), {"coil.loops", "coil.loop_length"}, ""});
  derived(all, "coil.return_pipe", say("Return pipe"), c.return_pipe, Q::length,
          {say("straight back along the trench: its length"), {"coil.trench_length"}, ""});
  if (plan.wishes.unknown == CoilUnknown::coil_length)
    derived(all, "coil.length", say("Coil length, return pipe included"), c.coil_length, Q::length,
            {say("loops + return"), {"coil.loop_pipe", "coil.return_pipe"}, ""});
  derived(all, "coil.loop_pipe_by_sum", say("Pipe in the loops by pi D + p, for comparison"),
          c.loops * loop_length_by_sum(c.loop_diameter, c.pitch), Q::length,
          {say("loops x (pi D + p); used nowhere"),
           {"coil.loops", "coil.loop_length_by_sum"},
           say("common practice, no source")});
  derived(all, "coil.pipe_per_trench", say("Pipe per length of trench"), c.coil_length / c.trench_length,
          Q::count, {say("coil length/trench length"), {"coil.length", "coil.trench_length"}, ""});
}

}  // namespace underlawn::figures
