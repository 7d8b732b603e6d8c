// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>

namespace underlawn {

// A length in whole micrometres, m. Two ways that are equally long compare as equal however a lot lies turned
// or shifted, and the order they were tried in decides, not the last bits of a sum.
inline double in_steps(double metres) {
  constexpr double kSteps = 1e6;
  return std::round(metres * kSteps) / kSteps;
}

}  // namespace underlawn
