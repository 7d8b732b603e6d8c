// SPDX-License-Identifier: GPL-3.0-or-later
// What a tape can do: which corners see a point, and how well two tapes fix it.
#pragma once

#include <vector>

#include "plan/stake_out.h"
#include "plane/thin_cut.h"

namespace underlawn {

// Whether a tape pulled tight from a to b stays out of every house; along a wall or over a corner it does.
// Where either end lies inside a house (deeper than kSameStake) it does not.
bool tape_is_free(const std::vector<Ring>& houses, Point a, Point b);

struct Trunk {
  Point at;
  double radius = 0;  // m
};

// What a tape meets on the way: buildings and trunks stop it, beyond the lot line nobody asked the neighbour.
struct TapeGround {
  std::vector<Ring> houses;
  std::vector<Trunk> trunks;
  std::vector<Ring>
      planted;  // ground not to be dug: an orchard, beds, a pond; a tape is lifted over, if at all
  Ring lot;     // empty: none is known
};
TapeGround tape_ground(const Site& site);
bool tape_is_free(const TapeGround& ground, Point a, Point b);  // no building, no trunk
bool stays_on_lot(const TapeGround& ground, Point a, Point b);  // true where no lot is known
bool stays_off_planted(const TapeGround& ground, Point a, Point b);

// A pair with a tape over the neighbour's land, or through what is planted, is taken only where every other
// pair is this many times less sure.
inline constexpr double kOffLotWorse = 6, kPlantedWorse = 6;

double cut_angle(Point at, Point first,
                 Point second);  // rad, 0..pi/2, at which the arcs round the two cross in `at`

double tape_error(double length);  // m, of one tape: 5 mm and 1 in 1000

// m: expected error of a point taped from two corners, each tape erring by 5 mm and 1 in 1000.
double expected_error(Point at, Point first, Point second);

// What a tape is pulled over, buildings and trunks aside.
struct TapeWay {
  bool on_lot = true, off_planted = true;
};
TapeWay tape_way(const TapeGround& ground, Point a, Point b);
// The expected error, worse by what is in the tapes' way.
double tape_worth(Point at, Point first, Point second, const TapeWay& first_way, const TapeWay& second_way);

}  // namespace underlawn
