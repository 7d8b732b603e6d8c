// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/weather_file.h"

#include <algorithm>
#include <span>

#include "base/quantity.h"
#include "base/say.h"
#include "base/table_text.h"
#include "base/typed_text.h"
#include "base/utf8.h"
#include "house/calendar.h"

namespace underlawn {
namespace {

constexpr std::array<const char*, 12> kMonths = {mark("January"), mark("February"), mark("March"),
                                                 mark("April"),   mark("May"),      mark("June"),
                                                 mark("July"),    mark("August"),   mark("September"),
                                                 mark("October"), mark("November"), mark("December")};
constexpr double kMissing = 99.9;

Trouble trouble(std::string thing, std::string value, std::string bound, std::string advice) {
  return {"weather_file", std::move(thing), std::move(value), std::move(bound), std::move(advice)};
}

std::string in_line(const std::string& thing, int line) {
  return say("{} in line {} of the weather file", thing, std::to_string(line));
}

struct Hour {
  int month = 1, day = 1, hour = 1;  // hour 1 is midnight to one
  bool operator==(const Hour&) const = default;
  bool leap() const { return month == 2 && day == 29; }
};

std::string spoken(const Hour& h) {
  return say("{} {}, hour {}", h.day, translated(kMonths[h.month - 1]), h.hour);
}

Hour after(Hour h) {
  if (++h.hour <= 24) return h;
  h.hour = 1;
  const int days = h.leap() ? 29 : kMonthDays[h.month - 1];
  if (++h.day <= days) return h;
  return {h.month % 12 + 1, 1, 1};
}

// The first `most` fields: what stands behind them is not wanted and long.
std::vector<std::string_view> first_fields(std::string_view line, std::size_t most) {
  std::vector<std::string_view> fields;
  while (fields.size() < most) {
    const std::size_t comma = line.find(',');
    fields.push_back(trimmed(line.substr(0, comma)));
    if (comma == std::string_view::npos) break;
    line.remove_prefix(comma + 1);
  }
  return fields;
}

bool is_header(const TextLine& line, std::string_view keyword) {
  return folded(first_fields(line.text, 1)[0]) == keyword;
}

std::string place_name(std::string_view location) {
  std::string name;
  const auto fields = first_fields(location, 4);
  for (std::size_t i = 1; i < fields.size(); ++i)
    if (!fields[i].empty() && fields[i] != "-")
      name += (name.empty() ? "" : ", ") + valid_utf8(fields[i].substr(0, 60));
  return name.empty() ? say("weather file") : name;
}

Result<void> check_periods(const TextLine& line) {
  const auto fields = first_fields(line.text, 3);
  const auto is_one = [&](std::size_t i) { return i >= fields.size() || plain_number(fields[i]) == 1; };
  if (is_one(1) && is_one(2)) return {};
  return refuse(trouble(in_line("DATA PERIODS", line.number), in_quotes(line.text),
                        say("one period, one record an hour"),
                        say("Take a file of one year, hour by hour.")));
}

// The data rows.
Result<std::span<const TextLine>> rows_of(const std::vector<TextLine>& lines) {
  if (lines.empty() || !is_header(lines[0], "location"))
    return refuse(trouble(say("first line of the weather file"),
                          lines.empty() ? say("missing") : in_quotes(lines[0].text),
                          say("LOCATION and a place"),
                          say("Choose a file in the EnergyPlus weather format; its name ends in .epw.")));
  constexpr std::size_t kMostHeaders = 40;
  for (std::size_t i = 1; i < std::min(lines.size(), kMostHeaders); ++i)
    if (is_header(lines[i], "data_periods")) {
      if (auto ok = check_periods(lines[i]); !ok) return refuse(ok.error());
      return std::span(lines).subspan(i + 1);
    }
  return refuse(trouble(say("header of the weather file"), say("without a DATA PERIODS line"),
                        say("LOCATION to DATA PERIODS, eight lines"),
                        say("The file may be cut short: fetch it again.")));
}

Result<Hour> hour_of(const TextLine& row, const std::vector<std::string_view>& fields) {
  const std::array<const char*, 3> names = {mark("month"), mark("day"), mark("hour")};
  std::array<int, 3> at{};
  for (std::size_t i = 0; i < 3; ++i) {
    const auto number = plain_number(fields[i + 1]);
    const int most = i == 0 ? 12 : i == 1 ? 31 : 24;
    if (!number || !(*number >= 1 && *number <= most) || *number != static_cast<int>(*number))
      return refuse(trouble(in_line(translated(names[i]), row.number), in_quotes(fields[i + 1]),
                            say("a whole number from 1 to {}", std::to_string(most)),
                            say("The file is damaged: fetch it again.")));
    at[i] = static_cast<int>(*number);
  }
  return Hour{at[0], at[1], at[2]};
}

Result<double> dry_bulb(const TextLine& row, std::string_view field) {
  const std::string thing = in_line(say("dry bulb"), row.number);
  const auto t = plain_number(field);
  if (!t)
    return refuse(
        trouble(thing, in_quotes(field), say("a number"), say("The file is damaged: fetch it again.")));
  if (*t >= kMissing)
    return refuse(trouble(thing, say("{}, which stands for a missing value", in_quotes(field)),
                          say("measured"), say("Choose a typical year: those have no gaps.")));
  if (!(*t > -70 && *t < 70))
    return refuse(trouble(thing, in_quotes(field) + " C", say("above -70 C and below 70 C"),
                          say("The file is damaged or in another unit.")));
  return *t;
}

// Reads rows one by one and keeps to the calendar.
struct Year {
  Hour expected;
  std::optional<Hour> last;
  std::vector<double> outdoor;
  int leap_hours = 0;

  bool complete() const { return static_cast<int>(outdoor.size()) == kWeatherHours; }
  Result<void> take(const TextLine& row);
};

Result<void> Year::take(const TextLine& row) {
  const auto fields = first_fields(row.text, 8);
  if (fields.size() < 8)
    return refuse(trouble(
        say("line {} of the weather file", std::to_string(row.number)),
        last ? say("{} fields, after {}", fields.size(), spoken(*last)) : say("{} fields", fields.size()),
        say("eight fields or more"), say("The file was cut short: fetch it again.")));
  const auto hour = hour_of(row, fields);
  if (!hour) return refuse(hour.error());
  if (complete())
    return refuse(trouble(say("line {} of the weather file", std::to_string(row.number)), spoken(*hour),
                          say("absent, for the year is complete"), say("Take a file of one year.")));
  if (expected == Hour{3, 1, 1} && *hour == Hour{2, 29, 1}) expected = *hour;
  if (*hour != expected)
    return refuse(trouble(in_line(say("hour"), row.number), spoken(*hour), spoken(expected),
                          say("An hour is missing, there twice or out of place: fetch the file again.")));
  const auto t = dry_bulb(row, fields[6]);
  if (!t) return refuse(t.error());
  if (hour->leap())
    ++leap_hours;
  else
    outdoor.push_back(*t);
  last = *hour;
  expected = after(*hour);
  return {};
}

}  // namespace

Result<WithRemarks<WeatherYear>> weather_from_epw(std::string_view text) {
  const std::vector<TextLine> lines = text_lines(text);
  const auto rows = rows_of(lines);
  if (!rows) return refuse(rows.error());
  Year year;
  for (const TextLine& row : *rows)
    if (auto ok = year.take(row); !ok) return refuse(ok.error());
  if (!year.complete())
    return refuse(trouble(say("weather file"),
                          year.last ? say("{} hours long, the last {} in line {}", year.outdoor.size(),
                                          spoken(*year.last), lines.back().number)
                                    : say("{} hours long", year.outdoor.size()),
                          say("8760 hours long"), say("The file was cut short: fetch it again.")));
  WithRemarks<WeatherYear> out{{place_name(lines[0].text), std::move(year.outdoor)}, {}};
  if (year.leap_hours > 0)
    out.remarks.push_back({"weather_file_leap_day", say("29 February of the weather file"),
                           say_as("a day", "left out"), "", say("The years worked with have 365 days.")});
  return out;
}

}  // namespace underlawn
