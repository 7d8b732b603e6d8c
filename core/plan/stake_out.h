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
  std::string
      tag;  // "A", "B", ... round the house, counter-clockwise from the corner nearest the lot's south-west
  Point at;
  bool operator==(const HouseCorner&) const = default;
};

struct Tie {
  std::string point;  // "1 head", "1 end", "header 2", "run 3"
  Point at;
  std::string first, second;   // tags of the house corners taped from
  double first_distance = 0;   // m
  double second_distance = 0;  // m
  // How sure the tape fixes the point: the angle at which the two arcs cut, rad, 0..pi/2. Near 0 is poor.
  double cut = 0;
  bool left_of_base =
      true;  // on which side of the line from first to second, so that the other crossing is not meant
  bool operator==(const Tie&) const = default;
};

struct StakeOut {
  std::vector<HouseCorner> corners;
  std::vector<Tie> ties;
  bool operator==(const StakeOut&) const = default;
};

// Chooses for each point the two corners that both see it (the tape does not pass through the house) and
// whose arcs cut best. A point that fewer than two corners see is tied to the best two all the same, with cut
// = 0 to mark it.
StakeOut make_stake_out(const Site& site, const Layout& layout);

// The point again from a tie, as a crew finds it; for proving the sheet.
Point point_from_tie(const StakeOut& stake_out, const Tie& tie);

}  // namespace underlawn
