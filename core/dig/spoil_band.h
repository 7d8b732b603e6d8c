// SPDX-License-Identifier: GPL-3.0-or-later
// Where the heap of one trench can lie on one of its sides.
#pragma once

#include "dig/dig_ground.h"
#include "dig/dig_order.h"

namespace underlawn {

struct SpoilBand {
  bool fits = false;
  std::vector<Ring> rings;  // on the lot
  SpoilHeap heap;
  double dear = 0;         // m2 of it on dear ground
  double over_lines = 0;   // m2 of it over buried lines
  std::string blocked_by;  // where it does not fit
};

// A heap gives way where what touches the trench itself, or stands in the way, leaves no room: it is then
// shorter and wider. Less than this share of the trench's length is no place for it.
// So does it to roots, house walls and buried lines, where it gets not much wider.
inline constexpr double kLeastHeapLength = 0.4;

// `sign`: 1 left of the piece's line, -1 right. `touching`: other pieces that meet this one, and all of
// header and run, on which no spoil may lie. `heads`: openings that stay at heads of other trenches, which
// it does not cover either.
SpoilBand spoil_band(const DigStep& piece, int sign, const std::vector<const DigStep*>& touching,
                     const std::vector<Ring>& heads, const DigGround& ground, const Site& site, double repose,
                     double off);

}  // namespace underlawn
