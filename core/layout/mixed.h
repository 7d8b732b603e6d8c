// SPDX-License-Identifier: GPL-3.0-or-later
// Trenches that lie neither all in rows nor all in columns: places at the heights and positions that rows and
// columns suggest, chosen by iterated local search on their conflict graph (swaps of one for two; Andrade,
// Resende and Werneck, "Fast local search for the maximum independent set problem", J. Heuristics 18, 2012).
#pragma once

#include "layout/columns.h"
#include "layout/rows.h"

namespace underlawn {

// Lower ends of middle lines in the turned plane, at least as many as `from` where those are all legal
// places. Stops at `enough`. Deterministic.
std::vector<Point> mixed_places(const Strips& strips, const std::vector<Column>& columns,
                                const std::vector<PackedRow>& rows, std::vector<Point> from, int enough);

}  // namespace underlawn
