// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/calendar.h"

#include "base/say.h"

namespace underlawn {
namespace {

constexpr const char* kMonths[] = {mark("Jan"), mark("Feb"), mark("Mar"), mark("Apr"),
                                   mark("May"), mark("Jun"), mark("Jul"), mark("Aug"),
                                   mark("Sep"), mark("Oct"), mark("Nov"), mark("Dec")};

struct Date {
  int month, day;
};

Date date_of(int day) {
  int month = 0;
  day = ((day % 365) + 365) % 365;
  while (day >= kMonthDays[month]) day -= kMonthDays[month++];
  return {month, day + 1};
}

}  // namespace

std::string date_of_day(int day) {
  const Date d = date_of(day);
  return say_as("day and month", "{} {}", d.day, translated(kMonths[d.month]));
}

std::string date_of_hour(int hour) {
  const std::string clock = std::to_string(hour % 24);
  return say("{}, {}:00", date_of_day(hour / 24), (clock.size() < 2 ? "0" : "") + clock);
}

int month_of_day(int day) {
  return date_of(day).month;
}

}  // namespace underlawn
