// SPDX-License-Identifier: GPL-3.0-or-later
// Trenches in rows: the tightest of one direction that a dynamic program over their heights finds.
#pragma once

#include "layout/strips.h"

namespace underlawn {

// The most rows that fit the intervals at the spacing, lowest first from `from` up; at most `most`.
// Taking the lowest free place again and again is never beaten on count.
void stack_rows(FreeView free, double spacing, double from, int most, std::vector<double>& rows);
// The same from `from` down, highest first.
void hang_rows(FreeView free, double spacing, double from, int most, std::vector<double>& rows);

// One row of the tightest packing.
struct PackedRow {
  double y = 0;
  Free places;  // x at which a trench may begin; never none
};

// The rows, a spacing apart, that hold the most trenches: dynamic programming over the heights at which the
// count of a row changes and their multiples of the spacing. Heights are sampled every `step` m and changes
// narrowed to well under kFitSlack.
struct DenseRows {
  int most = 0;  // trenches in the chosen ones
  std::vector<PackedRow> chosen;
  std::vector<PackedRow> tried;
};
DenseRows densest_rows(const Strips& strips, double step, bool keep_tried);

// Sampled every `step` m: how many rows hold at least, and what no set of trenches of this bearing exceeds
// but for what lies between the samples.
struct RowBounds {
  int least = 0;
  int most = 0;
};
RowBounds row_bounds(const Strips& strips, double step);

}  // namespace underlawn
