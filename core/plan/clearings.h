// SPDX-License-Identifier: GPL-3.0-or-later
// How near what is dug comes to what is on the lot: for each thing the shortest line, to be drawn and
// measured.
#pragma once

#include <string>
#include <vector>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

struct Clearing {
  std::string dug;      // "Trench 3", "Header", "Supply run"
  std::string thing;    // "Septic tank", "Lot edge 2"
  int feature_id = 0;   // 0: a lot edge
  Segment line;         // from what is dug to the thing; ends equal where they meet
  double measured = 0;  // m, its length: from the edge of the floor of a coil trench or of the run's trench
  double required = 0;  // m
  std::string source;   // of what is required
  bool coil = false;    // what is dug is a coil trench
  bool operator==(const Clearing&) const = default;
};

// For every feature and lot edge the nearest coil trench; for those that header and run may not cross, the
// nearest of these as well (but the house they lead to). Features in the site's order, then lot edges.
std::vector<Clearing> clearings(const Plan& plan, const Outcome& outcome);

// The shortest segment from an outline or line to another; both ends equal where they meet. Needs a point in
// each. `closed`: the last point joins the first; a point inside a closed one is where they meet.
Segment shortest_between(const Polyline& a, bool a_closed, const Polyline& b, bool b_closed);

}  // namespace underlawn
