// SPDX-License-Identifier: GPL-3.0-or-later
// The stake-out as CSV: for a total station, a spreadsheet, or a crew with tapes and a telephone.
#pragma once

#include <string>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

// RFC 4180. A row each for the house corners taped from and the stakes, in the order of the stake-out:
//   kind         corner or stake
//   name         "A", "1 head", "header 2"
//   x, y         east and north of the drawing's origin, of the drawing as it lies (north turned or not)
//   elevation    of the ground between the spot heights; empty where there are none
//   tie 1/2      house corner and tape from it; empty for corners
//   side         on which side of the line from tie 1 to tie 2 the stake stands: left or right
//   cut          angle at which the tapes cross, degrees
//   check        third house corner and tape, or the second pair's first, to prove the stake by; may be empty
//   base from/to, station, offset  along and square to the base line, offset to its left above 0
// Lengths in metres or feet with decimals, as the head of each column says, to a millimetre or a thousandth
// of a foot.
std::string stake_csv(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
