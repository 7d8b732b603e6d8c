// SPDX-License-Identifier: GPL-3.0-or-later
// Plans that many tests start from, built in code so that a test can change one thing of them.
#pragma once

#include "plan/plan.h"

namespace underlawn::sample {

inline constexpr double kFoot = 0.3048;  // m, exactly

// Points typed in feet.
Point feet(double x, double y);
Ring box_feet(double left, double bottom, double right, double top);

// Ids of the half acre's features.
enum HalfAcreId { house = 1, septic_tank, drain_field, reserve, well, oak, maple, birch, power, water };

// 150 ft by 145.2 ft, street to the south, north up: house with its entry point in the rear wall, septic
// tank, drain field and reserve in front, a well, three trees, a buried power line right across behind the
// house (the supply run has to cross it), a water line from the well. Four 100 ft coil trenches fit behind
// the house.
Plan half_acre();

// 40 ft by 60 ft with a house: nothing of the default loop fits.
Plan tiny_lot();

// As a new window shows it: nothing drawn.
Plan empty();

}  // namespace underlawn::sample
