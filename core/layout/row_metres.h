// SPDX-License-Identifier: GPL-3.0-or-later
// Trenches of free length in one row.
#pragma once

#include "layout/longest_rows.h"

namespace underlawn {

class RowMetres {
 public:
  RowMetres(const LengthBounds& bounds, double gap, HeadsAt heads) : bounds_(bounds), gap_(gap), at_(heads) {}

  // Trenches in a row's free stretches, so that they are the longest together; at most `wanted`. `heads`: x
  // where a header has room.
  std::vector<Interval> best(const Free& stretches, const Free& heads, int wanted) const;

 private:
  std::vector<Interval> in_stretch(Interval stretch, const Free& heads, int wanted) const;
  std::vector<Interval> one(Interval stretch, const Free& heads) const;
  std::vector<Interval> several(Interval stretch, const Free& heads, int count) const;

  LengthBounds bounds_;
  double gap_;
  HeadsAt at_;
};

double metres_in(const std::vector<Interval>& trenches);
bool holds(const Free& free, double at);

}  // namespace underlawn
