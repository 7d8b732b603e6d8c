// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of trenches of any length between two bounds: the most metres of one direction that a dynamic program
// over the heights of rows finds.
#pragma once

#include "layout/strips.h"

namespace underlawn {

struct LengthBounds {
  double least = 0, most = 0;  // m, of a trench
};

// At which end heads are; either: whichever makes the trench longest. In a lane: all along one line across
// the trenches, with a trench to its left and one to its right, each side in rows of its own.
enum class HeadsAt { either, low, high, lane };

struct LongRow {
  double y = 0;
  std::vector<Interval>
      trenches;  // in order of x, an end gap between them; one end of each has a header's room
};

struct LongestRows {
  std::vector<LongRow> rows;  // lowest first
  double metres = 0;
  int count = 0;
  std::optional<double> lane;  // x of the heads to its left; an end gap on, those to its right
};

// The most metres in rows a spacing apart, in at most `wanted` trenches. Rows are tried at so many heights in
// a spacing and, where `events`, where an obstacle begins or ends, with whole spacings from all of them.
// Exact for those rows but where a row's stretches lie nearer than the end gap and both bounds bind.
LongestRows longest_rows(const Strips& strips, const LengthBounds& bounds, int wanted, int heights,
                         bool events, HeadsAt heads);

// The rows as an arrangement. Where rows hold two trenches their heads face each other, in line as far as the
// rows allow.
Arrangement arranged(const Strips& strips, const Bearing& bearing, const LongestRows& rows,
                     const LengthBounds& bounds);

}  // namespace underlawn
