// SPDX-License-Identifier: GPL-3.0-or-later
// The same stakes found in other ways, so that a wrong tape shows: a second pair of corners, and a base line.
#pragma once

#include <optional>
#include <vector>

#include "plan/stake_out.h"

namespace underlawn {

// A second pair of house corners that both see the point, in whose tapes a wrong tape of the first pair shows
// (shown_in_check) at least kLeastShown of its error: with tapes off what is planted, tapes on the lot and
// corners other than the first pair's as far as can be; among those the least expected error (plan/tape.h).
// Its arcs may be thin, for it proves a point and does not find it; below kFlattestCut (record/taping.h)
// lengths as printed would not come back to the point. Nothing where no pair shows enough.
std::optional<Tie> second_tie(const Site& site, const StakeOut& stake_out, const Tie& first);
// Share of an error of one tape of the first pair, the other being right, by which the better new tape of the
// second pair is off; of the first pair's two tapes the one that shows less. With unit vectors u from the
// corners to the point: an error of tape 1 moves the point square to u2, by 1/|u1 x u2| of it, and tape a
// measures |ua x u2| of that way. A corner of the first pair taped from again counts for nothing. 1 and more:
// shows whole.
double shown_in_check(const StakeOut& stake_out, const Tie& first, const Tie& second);
// Half: 10 cm wrong are 5 cm off in the check, well beyond what two tapes differ by. Our own choice.
inline constexpr double kLeastShown = 0.5;
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
