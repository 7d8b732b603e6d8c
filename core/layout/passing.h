// SPDX-License-Identifier: GPL-3.0-or-later
// Whether our pipes pass over or under what header and run cross.
#pragma once

#include "field/trench.h"

namespace underlawn {

enum class Passing { over, under, level };

// m that a line is taken to be thick, where only the depth of its top is known. Our own choice, no source.
inline constexpr double kLineThick = 0.15;

// Our pipes lie in the bedding on the trench's floor: over the line where the floor is no deeper than its
// top, under it where the bedding begins below its underside; level where they would meet it.
inline Passing passing(const Crossing& x, double bedding) {
  constexpr double kHair = 1e-9;
  if (x.trench_depth <= x.utility_depth + kHair) return Passing::over;
  return x.trench_depth - bedding >= x.utility_depth + kLineThick - kHair ? Passing::under : Passing::level;
}

}  // namespace underlawn
