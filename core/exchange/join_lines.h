// SPDX-License-Identifier: GPL-3.0-or-later
// Rings out of loose lines: a lot drawn as single lines and arcs, several lots that share their sides.
#pragma once

#include "plane/point.h"

namespace underlawn {

struct JoinedLines {
  std::vector<Ring> rings;       // every area the lines close, counter-clockwise; neighbours apart
  std::vector<Polyline> chains;  // the lines that close nothing, joined end to end where just two meet
  double narrowest_gap = 0;      // m: of two loose ends of chains, the least distance; 0 where there are none
};

// Ends within `reach` of one another are one place. Lines that cross without an end there are not joined.
JoinedLines join_lines(const std::vector<Polyline>& lines, double reach);

}  // namespace underlawn
