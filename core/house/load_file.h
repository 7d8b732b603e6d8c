// SPDX-License-Identifier: GPL-3.0-or-later
// A year of hourly loads as another program wrote them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace underlawn {

// Either heating and cooling of the house, or the load of the ground; what was not given is empty, but a
// house load with one of the two columns has noughts in the other.
struct HourlyFile {
  std::string name;
  std::vector<double> heating;  // W, kWeatherHours values >= 0
  std::vector<double> cooling;  // W, kWeatherHours values >= 0
  std::vector<double> ground;   // W, kWeatherHours values, above 0 where heat is taken from the ground
  bool operator==(const HourlyFile&) const = default;
};

// Reads a table with a line of column names on top, separated by semicolons, tabs or commas; with semicolons
// the decimal mark may be a comma. Columns, in any order and case:
//   heating_w, heating_kw or heating_btuh, and cooling_..., each 0 or more; or ground_w, ground_kw,
//   ground_btuh hour: rises by one, from 0 or 1 through the year or through each day time, timestamp or date
//   as 2023-01-01 00:00: rises by an hour from 1 January (hour 0, or 1 where hours are named by their end);
//   other ways of writing dates are not looked at, with a remark
// 8760 rows, the first is midnight to one on 1 January in standard time; of 8784 rows 29 February is left
// out, with a remark, as are other columns. Btu/h of 1055.056 J (NIST SP 811). Refuses, with the line and the
// hour: another number of rows, a gap or a repeat in the hours, a cell that is missing or no finite number, a
// negative load of the house, more than 1 MW, a year without any load, house and ground loads together, a
// column there twice.
Result<WithRemarks<HourlyFile>> loads_from_csv(std::string_view text, std::string name);

// The same as a table that reads back to an equal value: watts, in the fewest digits that do so.
std::string loads_to_csv(const HourlyFile& loads);

}  // namespace underlawn
