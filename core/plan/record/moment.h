// SPDX-License-Identifier: GPL-3.0-or-later
// Dates and times as they are typed in a record. Text in, text out: core has no clock and no time zones.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"

namespace underlawn {

struct Moment {
  long minutes = 0;  // since 0000-03-01 00:00 of the Gregorian calendar; of a date alone, its midnight
  bool timed = false;
  bool operator==(const Moment&) const = default;
};

// "2026-05-14", "2026-05-14 9:30", "2026-05-14T09:30"; years 1900 to 2199. Refuses, as `thing`, what is no
// day or no time.
Result<Moment> moment_from_text(std::string_view text, const std::string& thing);

// The same as it is kept: "2026-05-14" or "2026-05-14 09:30".
std::string print_moment(const Moment& moment);

// Whether a surely came before b: of two of which one has no time, only on an earlier day.
bool surely_before(const Moment& a, const Moment& b);

}  // namespace underlawn
