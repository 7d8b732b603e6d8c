// SPDX-License-Identifier: GPL-3.0-or-later
// Where everything lies as built, as a table for other programs.
#pragma once

#include <string>

#include "plan/record/as_built_solve.h"

namespace underlawn {

// CSV (RFC 4180) in the plan's units, to a millimetre, as the table of stakes; heads name the unit. A row for
// each trench end and bend, header and run point and crossing of the as-built, with its place in the drawing,
// its tie from two house corners, where it was planned, depth of the trench's floor (of a crossing: of the
// thing crossed), and of trenches the pipe and its pitch and, at the end, what stopped it ("rock").
std::string as_built_csv(const Plan& plan, const Outcome& planned, const AsBuiltAnswer& built);

// One row of it, for sheet and table alike.
struct BuiltRow {
  std::string point;  // "1 head"
  Point at;           // as built
  std::optional<Point> planned;
  std::optional<Tie> tie;
  std::optional<double> depth, pipe, pitch;  // m
  std::string note;
  StopCause stopped_by = StopCause::none;  // at a trench's end
};
std::vector<BuiltRow> built_rows(const Plan& plan, const Outcome& planned, const AsBuiltAnswer& built);

}  // namespace underlawn
