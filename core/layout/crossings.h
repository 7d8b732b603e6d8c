// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "layout/layout.h"

namespace underlawn {

// Every place where header or run passes a utility, a drive or an easement it may cross. For areas, each line
// of the outline that is passed. hand_dig = (tolerance zone +
// run width/2 x cos(angle)) / sin(angle), at most kMostHandDig: until both edges of the trench are out of the
// zone.
std::vector<Crossing> crossings_of(const Site& site, const Wishes& wishes, const Header& header,
                                   const SupplyRun& run);

inline constexpr double kMostHandDig = 10;  // m to each side; a flatter crossing is dug by hand all along

}  // namespace underlawn
