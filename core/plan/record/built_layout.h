// SPDX-License-Identifier: GPL-3.0-or-later
// The loop as it was dug: the planned layout with what the as-built says put in its place.
#pragma once

#include <string>
#include <vector>

#include "layout/layout.h"
#include "plan/plan.h"
#include "plan/record/taping.h"

namespace underlawn {

// A point of the as-built beside where it was planned.
struct BuiltPlace {
  std::string name;              // "1 head", "run 2"
  std::optional<Point> planned;  // none: not on the plan
  TapedPlace found;
  int trench = 0;  // its number; 0: of no trench
};

struct BuiltLoop {
  Layout layout;
  std::vector<BuiltPlace> places;  // of all that was taped or marked and could be found
  // What could not be used (the plan's own place or size was taken instead) or does not agree.
  std::vector<Trouble> remarks;
  bool changed = false;  // anything differs from the plan at all
};

// The plan's site with the depths of utilities as they were measured.
Site measured_site(const Plan& plan);

// Trenches keep their numbers. A trench stopped short ends so many metres from its head along its planned
// line; its coil keeps its pitch unless pipe or pitch is said. Where a head moved, the header's end moves
// with it, or a straight leg leads to it from the nearest place; legs that feed nothing any more are not
// there. Crossings are found anew, by measured depths where there are any. `planned` is the plan's own
// layout.
BuiltLoop built_loop(const Plan& plan, const Layout& planned);

// What of the planned layout lies elsewhere as built, to be drawn beside it.
Layout differing(const Layout& planned, const Layout& built);

}  // namespace underlawn
