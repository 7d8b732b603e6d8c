// SPDX-License-Identifier: GPL-3.0-or-later
// What a tape can do: which corners see a point, and how well two tapes fix it.
#pragma once

#include <vector>

#include "plan/stake_out.h"

namespace underlawn {

// Whether a tape pulled tight from a to b stays out of every house; along a wall or over a corner it does.
// Where either end lies inside a house (deeper than kSameStake) it does not.
bool tape_is_free(const std::vector<Ring>& houses, Point a, Point b);

double cut_angle(Point at, Point first,
                 Point second);  // rad, 0..pi/2, at which the arcs round the two cross in `at`

double tape_error(double length);  // m, of one tape: 5 mm and 1 in 1000

// m: expected error of a point taped from two corners, each tape erring by 5 mm and 1 in 1000.
double expected_error(Point at, Point first, Point second);

}  // namespace underlawn
