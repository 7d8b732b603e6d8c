// SPDX-License-Identifier: GPL-3.0-or-later
// Proof by distances that what was placed is allowed. Nothing here knows how it was found, nor any region
// made by boolean operations.
#pragma once

#include <vector>

#include "layout/layout.h"

namespace underlawn {

// Nearer than asked by less than this is as asked.
inline constexpr double kLegalSlack = 1e-3;  // m

// A coil trench inside the lot, off every edge's setback and every feature's clearance.
bool trench_is_legal(const Site& site, const Segment& axis, double width);
bool bent_trench_is_legal(const Site& site, const Polyline& axis, double width);
// Two coil trenches: nearly parallel and side by side, their middle lines keep the spacing; else their floors
// keep the end gap.
bool pair_is_legal(const Segment& a, const Segment& b, const Wishes& wishes);
// m that two trenches lie too near by that rule; 0 where they do not.
double lacking(const Segment& a, const Segment& b, const Wishes& wishes);
// Of trenches that bend: every leg of one with every leg of the other.
bool bent_pair_is_legal(const Polyline& a, const Polyline& b, const Wishes& wishes);
// A line of header or run: inside the lot, off setbacks, and off what it may not cross; the first
// `free_start` metres (the stub out of the wall) may pass the clearance of the house the entry point is on.
bool conduit_is_legal(const Site& site, const Wishes& wishes, const Polyline& line, double free_start);
// Header and run keep off coils, but for their heads.
bool conduit_keeps_off(const Polyline& line, const Segment& trench, const Wishes& wishes);
bool conduit_keeps_off_bent(const Polyline& line, const Polyline& trench, const Wishes& wishes);

}  // namespace underlawn
