// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/moment.h"

#include <cctype>
#include <cstdio>
#include <vector>

#include "base/say.h"
#include "base/table_text.h"
#include "base/typed_text.h"

namespace underlawn {

namespace {

constexpr long kDay = 1440;

struct Day {
  int year, month, day;
};

// Days of the Gregorian calendar since 0000-03-01: Hinnant, "chrono-compatible low-level date algorithms".
long days_of(Day d) {
  const long y = d.month <= 2 ? d.year - 1 : d.year;
  const long era = y / 400, of_era = y - era * 400;
  const long of_year = (153L * (d.month + (d.month > 2 ? -3 : 9)) + 2) / 5 + d.day - 1;
  return era * 146097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year;
}

Day day_of(long days) {
  const long era = days / 146097, of_era = days - era * 146097;
  const long year = (of_era - of_era / 1460 + of_era / 36524 - of_era / 146096) / 365;
  const long of_year = of_era - (365 * year + year / 4 - year / 100), month = (5 * of_year + 2) / 153;
  const int m = static_cast<int>(month < 10 ? month + 3 : month - 9);
  const int d = static_cast<int>(of_year - (153 * month + 2) / 5 + 1);
  return {static_cast<int>(year + era * 400 + (m <= 2 ? 1 : 0)), m, d};
}

// The whole of `text` as digits, at most `most` of them; -1 where it is anything else.
int number_of(std::string_view text, std::size_t most) {
  if (text.empty() || text.size() > most) return -1;
  int n = 0;
  for (char c : text) {
    if (std::isdigit(static_cast<unsigned char>(c)) == 0) return -1;
    n = n * 10 + (c - '0');
  }
  return n;
}

bool is_day(const Day& d) {
  if (d.year < 1900 || d.year > 2199 || d.month < 1 || d.month > 12 || d.day < 1 || d.day > 31) return false;
  const Day same = day_of(days_of(d));
  return same.month == d.month && same.day == d.day;
}

Trouble no_moment(std::string_view text, const std::string& thing) {
  return {"no_moment", thing, in_quotes(text), say("a day of the years 1900 to 2199, with or without a time"),
          say("Write it as 2026-05-14 or 2026-05-14 09:30.")};
}

}  // namespace

Result<Moment> moment_from_text(std::string_view whole, const std::string& thing) {
  const std::string_view text = trimmed(whole);
  const std::size_t gap = text.find_first_of(" T");
  const auto parts = fields_of(text.substr(0, gap), '-');
  if (parts.size() != 3 || parts[0].size() != 4) return refuse(no_moment(whole, thing));
  const Day day{number_of(parts[0], 4), number_of(parts[1], 2), number_of(parts[2], 2)};
  if (!is_day(day)) return refuse(no_moment(whole, thing));
  Moment m{days_of(day) * kDay, false};
  if (gap == std::string_view::npos) return m;
  const auto time = fields_of(text.substr(gap + 1), ':');
  if (time.size() != 2) return refuse(no_moment(whole, thing));
  const int hour = number_of(time[0], 2), minute = number_of(time[1], 2);
  if (hour < 0 || hour > 23 || minute < 0 || minute > 59) return refuse(no_moment(whole, thing));
  m.minutes += 60 * hour + minute;
  m.timed = true;
  return m;
}

std::string print_moment(const Moment& moment) {
  const Day d = day_of(moment.minutes / kDay);
  const int of_day = static_cast<int>(moment.minutes % kDay);
  char text[64];
  std::snprintf(text, sizeof text, "%04d-%02d-%02d", d.year, d.month, d.day);
  std::string out = text;
  if (!moment.timed) return out;
  std::snprintf(text, sizeof text, " %02d:%02d", of_day / 60, of_day % 60);
  return out + text;
}

bool surely_before(const Moment& a, const Moment& b) {
  if (a.timed && b.timed) return a.minutes < b.minutes;
  return a.minutes / kDay < b.minutes / kDay;
}

}  // namespace underlawn
