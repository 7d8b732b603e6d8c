// SPDX-License-Identifier: GPL-3.0-or-later
// Arrangements for the highest count: several columns, or rows packed each for itself.
#pragma once

#include "layout/columns.h"

namespace underlawn {

// The chosen columns filled, up to search.wanted trenches, nearest the house first; heads of neighbouring
// columns face each other. A trench whose head no header trench can reach is turned round or left out; `fits`
// is the number without the limit. `for_header` is turned.
Arrangement filled_columns(const Search& search, const Bearing& bearing, const std::vector<Column>& columns,
                           const std::vector<std::size_t>& chosen, const Ground& for_header, int* fits);

// Rows filled, up to search.wanted trenches; heads in line where the stretches allow it.
Arrangement filled_rows(const Search& search, const Bearing& bearing, const std::vector<PackedRow>& rows,
                        const Ground& for_header, int* fits);

}  // namespace underlawn
