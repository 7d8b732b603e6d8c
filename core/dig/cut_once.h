// SPDX-License-Identifier: GPL-3.0-or-later
// What the trenches of a dig plan have to do with one another: the run's sand over a coil whose trench it
// shares, and earth and sand that lie in two cuts.
//
//      |      backfill     |
//      |...o..........o....|  sand round the run's pipes, on `run floor`
//      |  backfill, under  |
//      |___sand, the coil__|
#pragma once

#include "dig/dig.h"

namespace underlawn {

FloorLevel even_floor(double depth);
// Of legs dug to depths of their own, weighed by their length; without any as deep as wished.
FloorLevel floor_of_header(const Header& header, double wished);

// m from the ground to the floor of the run's pipes where they share a coil trench: as deep as elsewhere, but
// no deeper than the sand over the coil.
double run_floor_over(const FloorLevel& coil_trench, double run_depth, double bedding);

// m of the run in this trench.
double shared_with_run(const Trench& trench, const Layout& layout);

// Whether it is the work of a coil trench that the run shares.
inline bool run_comes_over(const EarthWork& trench) {
  return trench.run_bedding > 0 || trench.under_run > 0;
}

// Adds to `bedding` of trenches that the run shares, and says how much of it that is.
void lay_run_over_coils(DigPlan& dig, const Layout& layout, const Wishes& wishes);

// Takes off bank and bedding what is in two of them.
void count_once(DigPlan& dig, const Layout& layout, const Wishes& wishes);

}  // namespace underlawn
