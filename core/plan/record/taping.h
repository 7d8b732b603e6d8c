// SPDX-License-Identifier: GPL-3.0-or-later
// Where a point of the dug loop lies, from the distances that were taped to it.
#pragma once

#include <string>
#include <vector>

#include "base/quantity.h"
#include "base/result.h"
#include "plan/record/as_built.h"
#include "plan/stake_out.h"

namespace underlawn {

// A tape beyond the two that fix the point.
struct TapeCheck {
  std::string corner;
  double length = 0;    // m, as taped
  double residual = 0;  // m: as taped less from the corner to the point found
  bool operator==(const TapeCheck&) const = default;
};

struct TapedPlace {
  Point at;
  bool taped = false;  // false: where it was marked
  double cut = 0;      // rad, 0..pi/2, at which the two arcs cross
  double error = 0;    // m, expected, each tape erring by 5 mm and 1 in 1000
  std::vector<TapeCheck> checks;
  bool operator==(const TapedPlace&) const = default;
};

// Arcs that cut flatter fix no point: an error of the tape is six times as large in it. That is where a place
// is refused, not where one is good: plane/thin_cut.h.
inline constexpr double kFlattestCut = 0.17453;  // rad: 10 degrees

// How far a check tape may be off, m: three times what tapes err, and at least 5 cm. Our own choice.
double most_residual(double check_length, double error);

// The point that `built` says, for messages called `thing` ("the head of trench 2"). Refuses, with value and
// bound: no two tapes and no mark; a corner that is not there or taped twice; tapes too short to meet, or one
// longer than the other and the base together; arcs that cut flatter than kFlattestCut; a check tape that is
// off by more than most_residual, saying so where the other side of the base would fit.
Result<TapedPlace> place_of(const std::vector<HouseCorner>& corners, const BuiltPoint& built,
                            const std::string& thing, UnitSystem units = UnitSystem::metric);

// The same tapes on the side of their base that was most likely meant where none was written down: the one
// that the check tapes allow, else the one nearer to `planned`. Left as it is where neither side is a place,
// or nothing is planned.
BuiltPoint on_likely_side(const std::vector<HouseCorner>& corners, BuiltPoint built, const Polyline& planned);

// As a crew would tape a known point, for a start: from the corners of its best tie. No tapes where there
// are fewer than two corners.
BuiltPoint taped_from(const Tie& tie);

}  // namespace underlawn
