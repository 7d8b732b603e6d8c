// SPDX-License-Identifier: GPL-3.0-or-later
// A drawing onto the lot: what was decided about it, as one edit of the plan.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "exchange/becomes.h"
#include "exchange/read_drawing.h"
#include "plan/plan.h"

namespace underlawn {

// From the drawing's coordinates to the plan's.
struct Placement {
  double unit = 1;  // m per unit of the drawing
  double turn = 0;  // rad counter-clockwise
  Point from, to;   // this place of the drawing comes to lie here, m
  Point operator()(Point p) const { return to + rotated(unit * (p - from), turn); }
};

// A drawing that says where on the Earth it lies goes where the plan lies there; any other with its lower
// left corner to (0, 0), its y to the plan's north. `of`: the shapes whose corner that is, all where it is
// empty.
Placement usual_placement(const Drawing& drawing, const Plan& plan, double unit,
                          const std::vector<int>& of = {});

// `unit` that makes `drawn`, two places of the drawing, lie `metres` apart; nothing where they are one place
// or the distance is none.
std::optional<double> unit_from(Point a, Point b, double metres);

struct Bringing {
  Placement placement;
  double reach = 0.02;  // m: ends of lines this near are one place
  std::optional<double> keep_within =
      30;                       // m from the lot: what lies farther off is left out; none: all is kept
  double height_unit = 0;       // m per unit of heights; 0: as of the drawing's lengths
  std::optional<Point> lot_at;  // in the drawing: of several rings the lot is the one around this place
  std::size_t lot_rank = 0;     // or else so many places behind the likeliest, round and round
};

struct Brought {
  Plan plan;
  std::map<Becomes, int> counts;
  std::vector<LeftOut> left_out;
  std::vector<Ring> lots;  // every ring that could be the lot, on the plan; the first is the one taken
  bool anything() const { return !counts.empty(); }
};

// `becomes`: for each group what it becomes. What cannot be taken (a ring that crosses itself, lines that
// close nothing, beyond what a plan holds) is left out and said. Where a lot comes in it takes the place of
// the plan's; everything else is added. The plan learns its place on the Earth where the drawing knows it and
// the plan does not, and no lot was drawn before that stays.
Brought bring_in(const Plan& plan, const Drawing& drawing, const std::vector<ShapeGroup>& groups,
                 const std::vector<Becomes>& becomes, const Bringing& how);

// The lot of the plan on the Earth with so many metres round it: what of a raster is of use. None where the
// plan has no lot, or does not know where it lies.
std::optional<MapCircle> circle_round_lot(const Plan& plan, double margin);

inline constexpr int kMostBrought = 2000;  // features of one drawing

}  // namespace underlawn
