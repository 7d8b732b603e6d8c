// SPDX-License-Identifier: GPL-3.0-or-later
// Trenches that lie neither all in rows nor all in columns: places at the heights and positions that rows and
// columns suggest, chosen on their conflict graph.
#pragma once

#include "layout/columns.h"
#include "layout/rows.h"

namespace underlawn {

// Lower ends of middle lines in the turned plane, at least as many as `from` where those are all legal
// places. Stops at `enough`. Deterministic.
std::vector<Point> mixed_places(const Strips& strips, const Columns& columns,
                                const std::vector<PackedRow>& rows, const std::vector<Point>& from,
                                int enough);

}  // namespace underlawn
