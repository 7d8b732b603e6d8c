// SPDX-License-Identifier: GPL-3.0-or-later
// Trenches of one direction, in a plane turned so that they lie along x. The pair rule: two trenches keep the
// spacing between their middle lines sideways, or the end gap lengthwise.
#pragma once

#include <vector>

#include "layout/capsule.h"
#include "layout/wishes.h"
#include "layout/zones.h"

namespace underlawn {

// What the placer knows of a trench.
struct TrenchSize {
  double length = 0;   // m
  double width = 0;    // m
  double spacing = 0;  // m between middle lines, sideways
  double end_gap = 0;  // m, lengthwise
};

// Trenches may come this much nearer than asked, so that a lot they fit exactly is not lost to rounding.
inline constexpr double kFitSlack = 1e-4;  // m

// Middle lines (y) at which a trench from x to x + length is free: closed intervals, in order. Exact.
std::vector<Interval> free_rows(const Ground& turned_ground, double x, const TrenchSize& size);
// Stretches of x in which a trench with its middle line at y is free, each at least a trench long. Exact.
std::vector<Interval> free_stretches(const Ground& turned_ground, double y, const TrenchSize& size);

// The most rows that fit the intervals at the spacing, lowest first from `from` up; at most `most`.
// Taking the lowest free place again and again is never beaten on count.
std::vector<double> stacked_rows(const std::vector<Interval>& free, double spacing, double from, int most);
// The same from `from` down, highest first.
std::vector<double> hung_rows(const std::vector<Interval>& free, double spacing, double from, int most);

// One row of the tightest packing.
struct PackedRow {
  double y = 0;
  std::vector<Interval> stretches;  // free ones, as free_stretches gives
};
int trenches_in(const std::vector<Interval>& stretches, const TrenchSize& size);

// The rows, a spacing apart, that hold the most trenches: dynamic programming over the heights at which the
// count of a row changes and their multiples of the spacing. Heights are sampled every `step` m and changes
// narrowed to well under kFitSlack.
std::vector<PackedRow> densest_rows(const Ground& turned_ground, const TrenchSize& size, double step);

}  // namespace underlawn
