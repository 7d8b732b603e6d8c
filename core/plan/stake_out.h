// SPDX-License-Identifier: GPL-3.0-or-later
// Setting out by tape: every point fixed by its distances from two house corners.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "layout/layout.h"
#include "site/site.h"

namespace underlawn {

struct HouseCorner {
  // "A", "B", ... round the house counter-clockwise from its corner farthest to the south-west (by the site's
  // north); a second house goes on with the next letter, after "Z" come "AA", "AB", ...
  std::string tag;
  Point at;
  bool operator==(const HouseCorner&) const = default;
};

struct Tie {
  // "1 head", "1 bend 1", "1 end", "header 2", "run 3"; "1 end, 3 end" where two trenches share a point
  std::string point;
  Point at;
  std::string first, second;   // tags of the house corners taped from
  double first_distance = 0;   // m
  double second_distance = 0;  // m
  // How sure the tape fixes the point: the angle at which the two arcs cut, rad, 0..pi/2. Near 0 is poor.
  double cut = 0;
  // On which side of the line from first to second, so that the other crossing is not meant.
  bool left_of_base = true;
  // The point in English whatever is spoken, for keys and files.
  std::string key;
  bool operator==(const Tie&) const = default;
};

struct StakeOut {
  std::vector<HouseCorner> corners;
  std::vector<Tie> ties;
  bool operator==(const StakeOut&) const = default;
};

inline constexpr double kSameStake = 0.01;  // m: points closer than this share a stake
inline constexpr double kLongestTape = 60;  // m: longer only where no shorter pair of tapes reaches

// Chooses for each head, bend and end of a trench, header point and bend of the run the two corners that both
// see it (the tape does not pass through a house) and whose arcs cut best: least expected error of the point
// when each tape errs by 5 mm and 1 in 1000. A point that fewer than two corners see is tied to the best two
// all the same, with cut = 0 to mark it. The entry point is on the house and needs no tie. No house, no ties.
StakeOut make_stake_out(const Site& site, const Layout& layout);

// The point again from a tie, as a crew finds it; for proving the sheet. Nothing where a tag is unknown or
// the tapes do not meet.
std::optional<Point> find_point_from_tie(const StakeOut& stake_out, const Tie& tie);
Point point_from_tie(const StakeOut& stake_out,
                     const Tie& tie);  // the same; not a number where there is none

// The corners alone, tagged as above. Points of a wall (turning less than 10 degrees) are no corners.
std::vector<HouseCorner> house_corners(const Site& site);

}  // namespace underlawn
