// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "field/straight.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

// Of the two lengths one is typed; the other is the coil group's.
void add_straight_wishes(Figures& all, const Wishes& w) {
  if (follows_in(w.pattern, w.unknown) == CoilUnknown::coil_length)
    typed(all, "coil.trench_length", say("Trench length"), w.trench_length, Q::length);
  else
    typed(all, "coil.length", say("Pipe in one trench"), w.coil_length, Q::length);
  if (pipe_levels(w.pattern) > 1)
    typed(all, "coil.level_distance", say("Distance of levels"), w.level_distance, Q::length);
  if (pipe_sides(w.pattern) > 1)
    typed(all, "coil.side_distance", say("Distance of the two sides"), w.side_distance, Q::length);
}

// Of pitch, coil length and trench length two are typed; the third is the coil group's.
void add_coil_wishes(Figures& all, const Wishes& w) {
  if (is_straight(w.pattern)) return add_straight_wishes(all, w);
  typed(all, "coil.loop_diameter", say("Loop diameter, centre line"), w.loop_diameter, Q::length);
  if (w.unknown != CoilUnknown::pitch) typed(all, "coil.pitch", say("Pitch"), w.pitch, Q::length);
  if (w.unknown != CoilUnknown::coil_length)
    typed(all, "coil.length", say("Coil length, return pipe included"), w.coil_length, Q::length);
  if (w.unknown != CoilUnknown::trench_length)
    typed(all, "coil.trench_length", say("Trench length"), w.trench_length, Q::length);
}

}  // namespace

void add_wishes(Figures& all, const Plan& plan) {
  const Wishes& w = plan.wishes;
  add_coil_wishes(all, w);
  typed(all, "layout.circuits_wanted", say("Circuits wanted"), w.circuits, Q::count);
  typed(all, "layout.spacing", say("Least spacing of middle lines"), w.spacing, Q::length);
  typed(all, "layout.end_gap", say("Least gap at trench ends"), w.end_gap, Q::length);
  typed(all, "dig.trench_width", say("Trench width at the floor"), w.trench_width, Q::length);
  typed(all, "dig.trench_depth", say("Trench depth"), w.trench_depth, Q::length);
  typed(all, "dig.run_width", say("Header and run trench, width"), w.run_width, Q::length);
  typed(all, "dig.run_depth", say("Header and run trench, depth"), w.run_depth, Q::length);
  typed(all, "dig.bedding", say("Bedding round the pipe"), w.bedding, Q::length);
  typed(all, "ground.swell", say("Swell of loose soil"), plan.ground.swell, Q::ratio);
  typed(all, "ground.shrinkage", say("Shrinkage of compacted soil"), plan.ground.shrinkage, Q::ratio);
  typed(all, "ground.repose", say("Angle of repose of spoil"), plan.ground.repose, Q::angle);
  typed(all, "ground.frost_depth", say("Frost depth"), plan.ground.frost_depth, Q::length);
}

}  // namespace underlawn::figures
