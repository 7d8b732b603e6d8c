// SPDX-License-Identifier: GPL-3.0-or-later
// One field of trenches of free length that holds the most metres.
#pragma once

#include "layout/best_whole.h"

namespace underlawn {

struct LongestField {
  Whole whole;
  std::vector<Bearing> bearings;  // that hold most
  int fits = 0;                   // most trenches found
};

// The longest rows; and where those all are as long as they may be or cannot be joined, arrangements of one
// length after another, each trench then drawn out as far as it may go. Asked to stop, what it gives is to be
// thrown away.
LongestField longest_field(const Setting& setting, const Coil& coil, const BestWhole& best_whole,
                           const std::stop_token& stop);

}  // namespace underlawn
