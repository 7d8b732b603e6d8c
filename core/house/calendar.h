// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <string>

namespace underlawn {

inline constexpr std::array<int, 12> kMonthDays = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

// "3 Feb, 06:00" of an hour of the common year, 0..8759 from midnight on 1 January.
std::string date_of_hour(int hour);
// "3 Feb" of a day of the year, 0..364.
std::string date_of_day(int day);
// 0..11 of a day of the year, 0..364.
int month_of_day(int day);

}  // namespace underlawn
