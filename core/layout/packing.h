// SPDX-License-Identifier: GPL-3.0-or-later
// Arrangements for the highest count: several columns, or rows packed each for itself.
#pragma once

#include "layout/columns.h"
#include "layout/rows.h"

namespace underlawn {

// The chosen columns filled, up to search.wanted trenches, nearest the house first; heads of neighbouring
// columns face each other where a header reaches them there. `fits` is the number without the limit.
Arrangement filled_columns(const Strips& strips, const Bearing& bearing, const Columns& columns,
                           const std::vector<std::size_t>& chosen, int* fits);

// Rows filled, up to search.wanted trenches; where every row holds one, with heads in line on the left or on
// the right as far as the places allow it.
std::vector<Arrangement> filled_rows(const Strips& strips, const Bearing& bearing,
                                     const std::vector<PackedRow>& rows, int* fits);

// Any legal places, likewise: lower ends of middle lines in the turned plane.
Arrangement filled_places(const Strips& strips, const Bearing& bearing, const std::vector<Point>& places,
                          int* fits);

}  // namespace underlawn
