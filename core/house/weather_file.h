// SPDX-License-Identifier: GPL-3.0-or-later
// A weather year from a file in the EnergyPlus weather format (EPW).
#pragma once

#include <string_view>

#include "base/result.h"
#include "house/weather.h"

namespace underlawn {

// The format is that of EnergyPlus, Auxiliary Programs, "EnergyPlus Weather File (EPW) Data Dictionary":
// header lines from LOCATION (its place is the name) to DATA PERIODS, then a line an hour with month, day,
// hour 1..24 in fields 2 to 4 and the dry bulb in field 7, in deg C, above -70 and below 70, 99.9 where it is
// missing. Lines end with LF, CR or CR LF. Years of the rows are not looked at: typical years join months of
// many years. Of a leap year 29 February is left out, with a remark. Refuses, with the line: what does not
// start with LOCATION or has no DATA PERIODS, more than one period or one record an hour, a gap or a repeated
// hour, a row cut short, no number, a missing or impossible temperature, a year that stops early or goes on.
Result<WithRemarks<WeatherYear>> weather_from_epw(std::string_view text);

}  // namespace underlawn
