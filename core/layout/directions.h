// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <numbers>
#include <vector>

#include "site/site.h"

namespace underlawn {

// A direction in which trenches could lie, 0 <= angle < pi.
struct Bearing {
  double angle = 0;    // rad
  bool drawn = false;  // along or across an edge of lot or house or a long utility: what a crew would pick
};

inline constexpr double kGridStep = 1 * std::numbers::pi / 180;  // rad

// All worth trying, in a fixed order: drawn ones, then every degree of the grid.
std::vector<Bearing> bearings_to_try(const Site& site);
// Between an angle and its neighbours: the refinement round a good one.
std::vector<Bearing> bearings_round(double angle);

}  // namespace underlawn
