// SPDX-License-Identifier: GPL-3.0-or-later
// The same stakes found in other ways, so that a wrong tape shows: a second pair of corners, and a base line.
#pragma once

#include <optional>

#include "plan/stake_out.h"

namespace underlawn {

// A second pair of house corners that both see the point, which shares as few corners as can be with the
// first; among those the least expected error. Nothing where no other pair sees it with arcs that cut at
// kLeastCheckCut or more.
std::optional<Tie> second_tie(const Site& site, const StakeOut& stake_out, const Tie& first);
inline constexpr double kLeastCheckCut = 0.1745;  // rad: 10 degrees

// The line through the two ends of a house wall: the wall with most stakes on its outer side, the longest of
// those. From its end with the lower tag.
struct BaseLine {
  HouseCorner from, to;
};
std::optional<BaseLine> base_line(const Site& site, const StakeOut& stake_out);

struct Offset {
  double along = 0;  // m from `from` towards `to`; negative behind `from`
  double off = 0;    // m square to it, to the left of the way from `from` to `to`; negative to the right
};
Offset offset_from(const BaseLine& base, Point p);
Point point_from_offset(const BaseLine& base, const Offset& offset);

}  // namespace underlawn
