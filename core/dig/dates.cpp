// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/dates.h"

#include <chrono>

namespace underlawn {

namespace {

std::optional<int> digits(std::string_view text) {
  int value = 0;
  for (char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = 10 * value + (c - '0');
  }
  return value;
}

std::string padded(int value, std::size_t width) {
  std::string text = std::to_string(value);
  return text.size() < width ? std::string(width - text.size(), '0') + text : text;
}

}  // namespace

std::optional<int> day_number(std::string_view date) {
  namespace c = std::chrono;
  if (date.size() != 10 || date[4] != '-' || date[7] != '-') return std::nullopt;
  const auto y = digits(date.substr(0, 4)), m = digits(date.substr(5, 2)), d = digits(date.substr(8, 2));
  if (!y || !m || !d || *y < 1900) return std::nullopt;
  const c::year_month_day day{c::year{*y}, c::month{static_cast<unsigned>(*m)},
                              c::day{static_cast<unsigned>(*d)}};
  if (!day.ok()) return std::nullopt;
  return static_cast<int>(c::sys_days{day}.time_since_epoch().count());
}

std::string date_text(int day) {
  const std::chrono::year_month_day date{std::chrono::sys_days{std::chrono::days{day}}};
  return padded(static_cast<int>(date.year()), 4) + "-" +
         padded(static_cast<int>(static_cast<unsigned>(date.month())), 2) + "-" +
         padded(static_cast<int>(static_cast<unsigned>(date.day())), 2);
}

int weekday_of(int day) {
  return static_cast<int>(std::chrono::weekday{std::chrono::sys_days{std::chrono::days{day}}}.iso_encoding());
}

bool is_weekdays(std::string_view weekdays) {
  char last = '0';
  for (char c : weekdays) {
    if (c <= last || c > '7') return false;
    last = c;
  }
  return !weekdays.empty();
}

bool works_on(std::string_view weekdays, int weekday) {
  return weekdays.find(static_cast<char>('0' + weekday)) != std::string_view::npos;
}

}  // namespace underlawn
