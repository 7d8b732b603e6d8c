// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/trench.h"

#include <algorithm>

#include "plane/strip.h"

namespace underlawn {

Polyline middle_line(const Trench& trench) {
  Polyline line = {trench.head};
  line.insert(line.end(), trench.bends.begin(), trench.bends.end());
  line.push_back(trench.end);
  return line;
}

double length_of(const Trench& trench) {
  return length(middle_line(trench));
}

Ring floor_of(const Trench& trench) {
  return strip_along(middle_line(trench), trench.width);
}

double depth_of_leg(const Header& header, std::size_t leg, double wished) {
  return leg < header.depths.size() ? header.depths[leg] : wished;
}

}  // namespace underlawn
