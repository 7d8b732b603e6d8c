// SPDX-License-Identifier: GPL-3.0-or-later
// What the placer knows of a trench. The pair rule: two trenches of one direction keep the spacing between
// their middle lines sideways, or the end gap lengthwise.
#pragma once

namespace underlawn {

struct TrenchSize {
  double length = 0;   // m
  double width = 0;    // m
  double spacing = 0;  // m between middle lines, sideways
  double end_gap = 0;  // m, lengthwise
  double pitch() const { return length + end_gap; }
};

// Trenches may come this much nearer than asked, so that a lot they fit exactly is not lost to rounding.
inline constexpr double kFitSlack = 1e-4;  // m

}  // namespace underlawn
