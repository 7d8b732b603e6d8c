// SPDX-License-Identifier: GPL-3.0-or-later
// Days of the calendar, by number, so that core needs no clock.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace underlawn {

// Days since 1970-01-01 of "2026-05-18"; nothing for any other form, a day that is none, or a year outside
// 1900..9999. Gregorian.
std::optional<int> day_number(std::string_view date);
std::string date_text(int day);  // "2026-05-18"
int weekday_of(int day);         // 1 Monday .. 7 Sunday, of any day number

// Rising digits 1..7, at least one.
bool is_weekdays(std::string_view weekdays);
bool works_on(std::string_view weekdays, int weekday);

}  // namespace underlawn
