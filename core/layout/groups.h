// SPDX-License-Identifier: GPL-3.0-or-later
// The field split into groups of trenches, each with a header of its own, all joined to one run.
#pragma once

#include "layout/aim.h"

namespace underlawn {

struct Grouped {
  Whole whole;
  std::vector<std::size_t> sizes;  // field trenches of each group, in the order they lie in whole.field
  int fits = 0;                    // most field trenches found
};

// setting.wishes.groups groups, circuits shared as evenly as there is room for; floors of different groups
// keep the spacing of trenches between them where that leaves room for all, else what any two trenches keep.
// A group whose header line is held has its heads on that line. The first group has the run; the header of
// every other starts on the run's end or on a header before it. Several places of the first are tried; where
// it leaves the others no room, the groups are parts of one field. Fewer groups where there is no room for
// more. Trenches last shown (Wishes::kept), parted into as many groups, are among what is tried, and what
// lies near them is worth a little, as in one field.
Grouped place_groups(const Site& drawn, const Setting& setting, const Coil& coil,
                     const std::stop_token& stop);

// Says that there are fewer groups than asked for.
Trouble groups_missing(int made, int asked);

}  // namespace underlawn
