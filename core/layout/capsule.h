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

// What the capsule covers along x of the strip low <= y <= high. Nothing where it does not enter the strip.
std::optional<Interval> extent_along_x(const Capsule& c, double low, double high);
// The same along y of the strip low <= x <= high.
std::optional<Interval> extent_along_y(const Capsule& c, double low, double high);

// The parts of `within` that no interval of `blocked` covers, in order; closed, possibly of no length.
// Sorts `blocked`.
std::vector<Interval> gaps(std::vector<Interval>& blocked, Interval within);

}  // namespace underlawn
