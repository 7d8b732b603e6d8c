// SPDX-License-Identifier: GPL-3.0-or-later
// Trenches side by side with their heads in a line: the arrangement crews build most easily.
#pragma once

#include "layout/arrangement.h"

namespace underlawn {

// A place for a column: trenches from x to x + length, with the heights free for their middle lines.
struct Column {
  double x = 0;
  std::vector<Interval> free;
  std::vector<Interval> heads_low;   // the part of them where a header fits across the heads at x
  std::vector<Interval> heads_high;  // and at x + length
  int fits = 0;                      // with the better side for the heads
};

// Columns at every position where an obstacle just stops being in the way, and every `step` m between.
// In order of x. `ground` and `for_header` are turned.
std::vector<Column> columns_of(const Ground& ground, const Ground& for_header, const Search& search,
                               double step, bool events);

// The most trenches in columns an end gap apart, and which columns those are: exact for the columns given.
int most_in_columns(const std::vector<Column>& columns, const TrenchSize& size,
                    std::vector<std::size_t>* chosen = nullptr);

// One column, heads on either end, and two columns whose heads face each other: the cheapest places for
// search.wanted trenches, best first, at most `most` of them.
std::vector<Arrangement> header_lines(const Search& search, const Bearing& bearing,
                                      const std::vector<Column>& columns, std::size_t most);

}  // namespace underlawn
