// SPDX-License-Identifier: GPL-3.0-or-later
// A stretch of lot line, a side of a feature, a utility or a trunk with the ground it keeps free: all points
// nearer than `reach` to a segment. It is convex, so it blocks one interval of any strip, found exactly and
// without a boolean operation. This is what the search for trenches runs on.
#pragma once

#include <optional>
#include <vector>

#include "plane/point.h"

namespace underlawn {

struct Capsule {
  Point a, b;
  double reach = 0;  // m, >= 0
};

struct Interval {
  double low = 0, high = 0;
  bool operator==(const Interval&) const = default;
};

}  // namespace underlawn
