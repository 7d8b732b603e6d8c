// SPDX-License-Identifier: GPL-3.0-or-later
// Taking hold of the header or of a stretch of the supply run: from then on it is held where it is put, and
// the rest is arranged round it.
#pragma once

#include <QString>
#include <optional>

#include "plan/outcome.h"
#include "plan/plan.h"
#include "window/selection.h"

namespace underlawn {

struct ConduitHold {
  bool header = false;        // else a place of the run
  int group = 1;              // header: of trenches
  Segment line;               // header: as it lay when taken hold of
  std::vector<Point> places;  // run: all that it is held to, with the one in hand
  std::size_t place = 0;      // run: which that is
  Point from;                 // where it was taken hold of, on it
};

// Nothing for what is neither, is not there, or belongs to a plan whose trenches are given. A place that the
// run is held to already is taken hold of within `reach` m; else a further one, in its order along the run.
std::optional<ConduitHold> hold_conduit(const Plan& plan, const Outcome& outcome, const Selected& what,
                                        Point at, double reach);

// The plan with what is held moved by so much, wherever that is; and as far that way as header and run may
// lie.
Plan wished_conduit(Plan plan, const ConduitHold& hold, Point by);
Plan dragged_conduit(const Plan& plan, const ConduitHold& hold, Point by);

// What keeps it from going on there, in words; empty where nothing does.
QString what_stopped_conduit(const Plan& is, const Plan& wish, const ConduitHold& hold);

}  // namespace underlawn
