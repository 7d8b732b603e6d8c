// SPDX-License-Identifier: GPL-3.0-or-later
// A measure that stays on the drawing: between two places, its line beside them.
#pragma once

#include <string>

#include "plane/point.h"

namespace underlawn {

// What is measured of the way from one place to the other.
enum class DimensionWay {
  straight,  // the distance itself
  level,     // its share along the drawing's x
  upright,   // its share along the drawing's y
};

struct Dimension {
  Point from, to;
  DimensionWay way = DimensionWay::straight;
  double offset = 0;  // m, of its line to the left of from -> to, negative to the right
  std::string text;   // printed behind the length, may be empty: "check on site"
  bool operator==(const Dimension&) const = default;
};

inline constexpr int kMostDimensions = 2000;

}  // namespace underlawn
