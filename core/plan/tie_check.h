// SPDX-License-Identifier: GPL-3.0-or-later
// The same stakes found in other ways, so that a wrong tape shows: a second pair of corners, and a base line.
#pragma once

#include <optional>
#include <vector>

#include "plan/stake_out.h"

namespace underlawn {

// A second pair of house corners that both see the point: with tapes off what is planted, tapes on the lot
// and corners other than the first pair's as far as can be; among those the least expected error
// (plan/tape.h). Nothing where no other pair sees it with arcs that are not thin (plane/thin_cut.h): such a
// check would tell less than the tape to the next stake does.
std::optional<Tie> second_tie(const Site& site, const StakeOut& stake_out, const Tie& first);
// Whether a second pair tapes from a corner of the first, so that one tape of it proves nothing new.
bool shares_corner(const Tie& first, const Tie& second);

// The line through the two ends of a wall. From its end with the lower tag.
struct BaseLine {
  HouseCorner from, to;
};

struct Wall {
  BaseLine line;
  int house_id = 0;
};
// Corner by corner round every building.
std::vector<Wall> building_walls(const Site& site, const StakeOut& stake_out);

// What is measured from a wall: along it to the station, then square off it.
struct Offset {
  double along = 0;  // m from `from` towards `to`; negative behind `from`
  double off = 0;    // m square to it, to the left of the way from `from` to `to`; negative to the right
};
Offset offset_from(const BaseLine& base, Point p);
Point point_from_offset(const BaseLine& base, const Offset& offset);
// Whether the wall drawn out to the station and the square from there stay out of buildings and trunks and on
// the lot.
bool offset_is_free(const Site& site, const BaseLine& base, Point p);

// The wall from which most stakes are measured freely, each counting the more, the less farther the wall has
// to be drawn out and squared off than it is long: L / (L + 2 x drawn out + square), our own.
std::optional<BaseLine> base_line(const Site& site, const StakeOut& stake_out);

// The entry point between the two corners of the wall it lies in; nothing without one.
struct WallMark {
  HouseCorner from, to;
  double from_distance = 0, to_distance = 0;  // m
};
std::optional<WallMark> entry_on_wall(const Site& site, const StakeOut& stake_out);

// How each further building stands to the first: two of its corners, each taped from two corners of the first
// as make_stake_out tapes a stake. `point` is the corner's tag.
std::vector<Tie> building_ties(const Site& site, const StakeOut& stake_out);

}  // namespace underlawn
