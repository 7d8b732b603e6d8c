// SPDX-License-Identifier: GPL-3.0-or-later
// What lies between the ground and the air.
#pragma once

#include <string>
#include <vector>

namespace underlawn {

struct SurfaceCover {
  std::string name;       // "Short grass"
  double resistance = 0;  // m2 K/W, of cover and air film together
  bool operator==(const SurfaceCover&) const = default;
};

// Bare and windy 0.04, short grass 0.07, long grass 0.12 (common practice, no source), in rising order.
const std::vector<SurfaceCover>& surface_covers();

}  // namespace underlawn
