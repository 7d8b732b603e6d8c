// SPDX-License-Identifier: GPL-3.0-or-later
// The shortest way across the plane, round what blocks it, dearer over what may be crossed.
#pragma once

#include <optional>
#include <vector>

#include "plane/point.h"
#include "plane/region.h"

namespace underlawn {

// Ground that may be crossed at a price: each metre inside costs `per_metre` more, and each entry
// `per_entry`, both in metres of plain digging.
struct DearGround {
  Region region;
  double per_metre = 0;
  double per_entry = 0;
};

struct RouteRequest {
  Point from, to;  // both inside `free`
  Region free;     // where the line may lie
  std::vector<DearGround> dear;
  double per_bend = 0;  // m of plain digging that a bend is worth avoiding
};

struct Route {
  Polyline line;      // from first, to last
  double length = 0;  // m on the ground
  double cost = 0;    // m of plain digging
};

// Exact over the visibility graph of `free` (A* with visibility tested only when a node is opened), plus the
// price terms along each straight leg. Nothing when there is no way.
std::optional<Route> shortest_route(const RouteRequest& request);

}  // namespace underlawn
