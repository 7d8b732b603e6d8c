// SPDX-License-Identifier: GPL-3.0-or-later
// The drawn run and header as a tree of tees: which way each circuit is fed and how far.
#pragma once

#include <vector>

#include "layout/layout.h"

namespace underlawn {

// A trench head may lie this far beside the header line that feeds it.
inline constexpr double kHeadReach = 0.05;  // m

// A place where circuits or further legs leave, and the way to it from the tee before.
struct Tee {
  int parent = -1;                 // -1: the first tee, its way is the run from the entry point
  double length = 0;               // m of trench from the parent, >= 0
  int bends_45 = 0, bends_90 = 0;  // corners on that way: 22.5 to 67.5 degrees, and sharper
  std::vector<int> trenches;       // indices in Layout::trenches whose heads are here
  std::vector<int> onward;         // tees fed from here, the one that feeds most circuits first
  int feeds = 0;                   // circuits here and beyond, > 0
};

// Tees after their parents; the first is where the run ends and feeding begins.
using HeaderTree = std::vector<Tee>;

// Refuses: no trenches, no run, a leg that starts off the lines before it, a head that no line passes.
Result<HeaderTree> header_tree(const Layout& layout);

}  // namespace underlawn
