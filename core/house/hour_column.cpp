// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/hour_column.h"

#include <charconv>
#include <chrono>

#include "base/say.h"
#include "base/typed_text.h"

namespace underlawn {
namespace {

Trouble gap(const TextLine& row, std::string_view found, const std::string& expected) {
  return {"load_file_hours", say("hour in line {} of the load file", std::to_string(row.number)),
          in_quotes(found), expected,
          say("An hour is missing, there twice or out of place: export the year again.")};
}

std::string_view cell_of(const TextTable& table, const TextLine& row, std::size_t column) {
  const auto fields = fields_of(row.text, table.separator);
  return column < fields.size() ? fields[column] : std::string_view();
}

// Hours of the year from 0 or 1, or of each day from 0 or 1.
Result<void> check_numbers(const TextTable& table, std::size_t column) {
  double first = 0, before = 0;
  bool daily = false;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const std::string_view cell = cell_of(table, table.rows[i], column);
    const std::optional<double> hour = plain_number(cell, table.mark);
    if (i == 0) {
      if (!hour || (*hour != 0 && *hour != 1))
        return refuse(gap(table.rows[i], cell, say("0 or 1, for the first hour of 1 January")));
      first = *hour;
    } else {
      if (i == 24) daily = hour == first;
      const double expected = daily && i % 24 == 0 ? first : before + 1;
      if (hour != expected)
        return refuse(gap(table.rows[i], cell, std::to_string(static_cast<long>(expected))));
    }
    before = *hour;
  }
  return {};
}

// "2023-01-01 00:00", with T for the blank, seconds and a zone or not: hours since 1970.
std::optional<long> hours_of(std::string_view text) {
  if (text.size() < 13 || text[4] != '-' || text[7] != '-' || (text[10] != ' ' && text[10] != 'T')) return {};
  const auto number = [&](std::size_t from, std::size_t size) {
    int value = -1;
    const char* end = text.data() + from + size;
    return std::from_chars(text.data() + from, end, value).ptr == end ? value : -1;
  };
  const int year = number(0, 4), month = number(5, 2), day = number(8, 2), hour = number(11, 2);
  if (year < 0 || month < 0 || day < 0 || hour < 0 || hour > 24) return {};
  if (text.size() >= 16 && text[13] == ':' && number(14, 2) != 0) return {};
  const std::chrono::year_month_day date{std::chrono::year(year), std::chrono::month(month),
                                         std::chrono::day(day)};
  if (!date.ok()) return {};
  return std::chrono::sys_days(date).time_since_epoch().count() * 24L + hour;
}

bool starts_the_year(std::string_view cell) {
  return cell.substr(5, 5) == "01-01" && (cell.substr(11, 2) == "00" || cell.substr(11, 2) == "01");
}

Result<std::vector<Trouble>> check_times(const TextTable& table, std::size_t column) {
  std::optional<long> before;
  for (const TextLine& row : table.rows) {
    const std::string_view cell = cell_of(table, row, column);
    const std::optional<long> hour = hours_of(cell);
    if (!before && !hour)
      return std::vector<Trouble>{{"load_file_times", say("column of times of the load file"),
                                   in_quotes(cell), say("written as 2023-01-01 00:00 to be checked"),
                                   say("The rows were taken as the hours of the year in their order.")}};
    if (!before && !starts_the_year(cell))
      return refuse(gap(row, cell, say("00:00 or 01:00 on 1 January in the first row")));
    if (!hour || (before && *hour != *before + 1))
      return refuse(gap(row, cell, say("one whole hour after the row above, in standard time all the year")));
    before = hour;
  }
  return std::vector<Trouble>{};
}

}  // namespace

Result<std::vector<Trouble>> check_hours(const TextTable& table) {
  if (const auto column = column_of(table, "hour"))
    if (auto ok = check_numbers(table, *column); !ok) return refuse(ok.error());
  for (const char* name : {"time", "timestamp", "date"})
    if (const auto column = column_of(table, name)) return check_times(table, *column);
  return std::vector<Trouble>{};
}

}  // namespace underlawn
