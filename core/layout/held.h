// SPDX-License-Identifier: GPL-3.0-or-later
// What lies already when trenches are searched for: locked trenches, and header and run that are fixed.
#pragma once

#include <vector>

#include "layout/arrangement.h"
#include "layout/connect.h"

namespace underlawn {

struct Held {
  std::vector<Polyline> trenches;  // middle lines, from head to end
  std::vector<Polyline> conduits;  // middle lines of header and run
  std::vector<Polyline> apart;     // trenches of another group: floors keep the spacing
  bool empty() const { return trenches.empty() && conduits.empty() && apart.empty(); }
};

// The ground with what is held, for trenches that lie at this angle: the pair rule against held trenches (of
// those within 30 degrees of the angle but not parallel a little more than it asks), and header and run kept
// off. It has no restriction of its own.
Confines with_held(const Confines& ground, const Held& held, const Wishes& wishes, double angle);
// The same for header and run: off held coils, but for their heads.
Confines header_with_held(const Confines& for_header, const Held& held, const Wishes& wishes);
// Ground for the middle lines of header and run, with what is held.
Conduits conduits_with_held(Conduits conduits, const Held& held);

// Proof by distances that a trench may lie beside what is held.
bool keeps_off_held(const Segment& trench, const Held& held, const Wishes& wishes);

// Wishes by whose pair rule groups of trenches keep apart.
Wishes apart_rule(const Wishes& wishes);

std::vector<Segment> legs_of(const std::vector<Polyline>& lines);

}  // namespace underlawn
