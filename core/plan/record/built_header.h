// SPDX-License-Identifier: GPL-3.0-or-later
// Header and run led to where the trenches' heads really are.
#pragma once

#include <optional>
#include <vector>

#include "field/trench.h"

namespace underlawn {

struct MovedHead {
  Point planned, built;
};

struct BuiltLines {
  Polyline run;  // from the entry point; empty: none
  std::vector<Polyline> legs;
  std::vector<std::optional<double>> depths = {};  // m, of the first so many legs; none: not measured
};

// Points of run and legs that were planned at a moved head go with it, but for lines that were measured
// themselves; legs that start on nothing are joined to the nearest place of the lines before them; heads that
// no line passes get a straight leg of their own; ends of planned legs that feed nothing are dropped.
void make_lines_meet(BuiltLines& lines, const std::vector<MovedHead>& moved,
                     const std::vector<Trench>& trenches, bool run_measured, bool header_measured);

}  // namespace underlawn
