// SPDX-License-Identifier: GPL-3.0-or-later
// Triangles between scattered points, no point inside a triangle's circle (Delaunay 1934).
#pragma once

#include <array>
#include <vector>

#include "plane/point.h"

namespace underlawn {

struct Triangle {
  std::array<int, 3> corners{};  // indices of points, counter-clockwise
  bool operator==(const Triangle&) const = default;
};

// Of points within kLargestPlan, taken to the millimetre; points that fall on one another count once. None
// where all lie on one line. In an order of their own, the same for the same points.
std::vector<Triangle> triangles_between(const std::vector<Point>& points);

}  // namespace underlawn
