// SPDX-License-Identifier: GPL-3.0-or-later
// Whether the rows of an hourly table follow one another without a gap.
#pragma once

#include "base/result.h"
#include "base/table_text.h"

namespace underlawn {

// Looks at the column `hour`, and at `time`, `timestamp` or `date`. Gives remarks on what it could not check.
Result<std::vector<Trouble>> check_hours(const TextTable& table);

}  // namespace underlawn
