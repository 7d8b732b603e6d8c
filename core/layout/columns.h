// SPDX-License-Identifier: GPL-3.0-or-later
// Trenches side by side with their heads in a line: the arrangement crews build most easily.
#pragma once

#include "layout/strips.h"

namespace underlawn {

// A place for a column: trenches from x to x + length, with the heights free for their middle lines.
struct Column {
  double x = 0;
  FreeView free;                    // with a header's room at one end or the other
  FreeView heads_low;               // the part of it where a header fits across the heads at x
  FreeView heads_high;              // and at x + length
  int fits = 0;                     // with either end for the head of each
  int fits_low = 0, fits_high = 0;  // with all the heads at one side
};

// In order of x, with the stretches that they look at: many, and each of an interval or two.
class Columns {
 public:
  void add(double x, const Free& heads_low, const Free& heads_high, double spacing);
  const std::vector<Column>& all() const { return all_; }

 private:
  FreeView kept(const Free& stretches);
  std::vector<Column> all_;
  std::vector<Free> store_;  // each with room of its own, so that nothing that lies in one moves
  Free either_;              // used again and again
};

// Columns every `step` m, and where an obstacle just stops being in the way: all of those, or those of sides
// square to the trenches.
Columns columns_of(const Strips& strips, double step, bool every_event);

inline constexpr double kFaceAcross = 2;  // m more than an end gap that columns may face each other across

// What the digging of an arrangement is never guessed below.
class LeastDigging {
 public:
  LeastDigging(const Strips& strips, const Bearing& bearing, int wanted, bool one_sided);
  double of_header(double x, const Free& rows) const;  // m of plain digging, with heads there

 private:
  double across_, beside_;
  Approach approach_;
};
// Only those that may be had for less than `dearest`.
Columns cheap_columns(const Strips& strips, double step, bool every_event, const LeastDigging& least,
                      double dearest);

// The most trenches in columns an end gap apart, and which columns those are: exact for the columns given.
int most_in_columns(const Columns& columns, const TrenchSize& size,
                    std::vector<std::size_t>* chosen = nullptr);

// One column, heads on either end, and two columns whose heads face each other: the cheapest places for
// `wanted` trenches, best first, at most `most` of them, none guessed at `dearest` or more.
struct HeaderLineWish {
  int wanted = 0;
  bool one_sided = false;
  std::size_t most = 1;
  double dearest = 1e9;  // m of plain digging
};
std::vector<Arrangement> header_lines(const Strips& strips, const Bearing& bearing, const Columns& columns,
                                      const HeaderLineWish& wish);

}  // namespace underlawn
