// SPDX-License-Identifier: GPL-3.0-or-later
// Where everything goes. make_layout is the only entrance: a better search replaces what is behind it.
#pragma once

#include <optional>
#include <stop_token>
#include <vector>

#include "base/result.h"
#include "field/trench.h"
#include "layout/wishes.h"
#include "plane/region.h"
#include "site/site.h"

namespace underlawn {

// Something that keeps digging out: an edge's setback or a feature's clearance.
struct Restriction {
  enum class Kind { setback, feature } kind = Kind::setback;
  int edge = -1;  // index of the lot corner the edge starts at
  int feature_id = 0;
  bool operator==(const Restriction&) const = default;
};

// What one restriction costs: the trenches that would fit more were it not there.
struct RestrictionCost {
  Restriction restriction;
  int trenches = 0;
  bool operator==(const RestrictionCost&) const = default;
};

struct Layout {
  Region buildable;              // where a coil trench may lie, to the edge of the trench
  Region routable;               // where header and run may lie, to the edge of their trench
  std::vector<Trench> trenches;  // numbered 1.. in order
  Header header;
  SupplyRun run;  // empty line when there is no way or no entry point
  std::vector<Crossing> crossings;
  std::vector<int> groups;  // field trenches of each group, as they follow in `trenches`; none: one field
  double direction = 0;     // rad, of the trenches from head to end
  int wanted = 0;           // circuits asked for
  int fits = 0;             // the most equal trenches found to fit, capped at `wanted` + 3
  std::vector<RestrictionCost> costs;  // dearest first; filled only when fewer fit than wanted
  std::vector<Trouble> troubles;       // no entry point, no way to the house and what closes it, ...
  bool operator==(const Layout&) const = default;
};

// Places up to wishes.circuits equal trenches of one direction (a coil in the supply trench may have
// another). The pair rule: two trenches that lie side by side keep wishes.spacing between their middle lines;
// end to end, or in different directions, their floors keep wishes.end_gap. Header and run keep off the coils
// by both half widths, but for half a header trench's width at each head. Deterministic. A layout with
// nothing placed says why in troubles. Asked to stop, it returns early with what it has; the caller throws
// that away.
Layout make_layout(const Site& site, const Wishes& wishes, const Coil& coil, std::stop_token stop = {});

// Buildable ground for the edges of a coil trench, and for header and run. Errors name the ring.
Result<Region> buildable_region(const Site& site);
Result<Region> routable_region(const Site& site);

}  // namespace underlawn
