// SPDX-License-Identifier: GPL-3.0-or-later
// A heat pump's performance table as text, and units to start from.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "house/heat_pump.h"

namespace underlawn {

// Reads a table with columns mode (heating or cooling), entering_c or entering_f, capacity_w, capacity_kw or
// capacity_btuh, and power_w or power_kw, a row for each entering water temperature; above it a line
// "name = ..." may stand. Columns may be in any order and case, others are left out; decimals by
// `table_from_text`. Refuses, with the line: a column that is missing or there twice in two units, another
// mode, no number; and what `check_heat_pump` refuses.
Result<HeatPump> heat_pump_from_csv(std::string_view text);
// A table that reads back to an equal unit, if its name is one line of at most 80 bytes without quotes or
// blanks at its ends.
std::string heat_pump_to_csv(const HeatPump& unit);

// `generic_heat_pump` at 2, 3, 4 and 5 tons of nominal cooling. No maker's, and their names say so.
const std::vector<HeatPump>& heat_pump_presets();

}  // namespace underlawn
