// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a building is as square as it is drawn, measured from outside: a diagonal goes through the rooms.
//
//        c        The wall a-b is drawn out beyond b, by eye along it; from there a tape goes to c. With
//        |\       both walls measured that fixes the angle at b. Where the building turns inwards the tape
//   a----b-p      goes straight from a to c, over the open corner.
#pragma once

#include <vector>

#include "plan/stake_out.h"

namespace underlawn {

struct CornerCheck {
  HouseCorner a, b, c;  // one after another along the walls
  double out = 0;       // m beyond b; 0: straight from a to c
  double length = 0;    // m
  int house_id = 0;
};

// For every building as many as fix its shape besides its walls (corners less three), where a tape can be
// pulled; corners that turn inwards first, else in their order. `out` > 0.
std::vector<CornerCheck> corner_checks(const Site& site, const StakeOut& stake_out, double out);

}  // namespace underlawn
