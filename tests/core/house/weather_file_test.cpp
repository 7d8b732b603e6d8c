// SPDX-License-Identifier: GPL-3.0-or-later
// Files made here in the format of EnergyPlus, Auxiliary Programs, "EnergyPlus Weather File (EPW) Data
// Dictionary", with temperatures of our own.
#include "house/weather_file.h"

#include <gtest/gtest.h>

#include <cstdio>

#include "support/mutated_text.h"

using namespace underlawn;

namespace {

const std::string kHeader =
    "LOCATION,Anywhere Airport,-,USA,Made Up,999999,45.00,-93.00,-6.0,250.0\n"
    "DESIGN CONDITIONS,0\n"
    "TYPICAL/EXTREME PERIODS,0\n"
    "GROUND TEMPERATURES,1,.5,,,,-2.55,-3.69,-1.66,1.51,9.82,16.22,20.55,21.86,19.62,14.65,8.00,1.83\n"
    "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\n"
    "COMMENTS 1,\"Made up; for tests, only\"\n"
    "COMMENTS 2,\n"
    "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n";
const char* kRest =
    "1.8,79,100100,0,1415,288,0,0,0,0,0,0,0,340,6.7,6,6,20.0,420,9,999999999,0,0.0500,0,88,0.000,0.0,0.0";

// Hour h of the year has -20 + 0.005 h degrees; those of 29 February have 60.
std::string epw(bool leap, int rows = 9000) {
  const int days[] = {31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  std::string text = kHeader;
  int h = 0;
  for (int m = 1; m <= 12; ++m)
    for (int d = 1; d <= days[m - 1]; ++d)
      for (int hour = 1; hour <= 24 && rows > 0; ++hour, --rows) {
        const bool leap_day = m == 2 && d == 29;
        char line[300];
        std::snprintf(line, sizeof line, "%d,%d,%d,%d,60,C9C9*0?9E8,%.3f,%s\n", 1990 + m, m, d, hour,
                      leap_day ? 60.0 : -20 + 0.005 * h, kRest);
        if (!leap_day) ++h;
        text += line;
      }
  return text;
}
std::string swapped(std::string text, const std::string& from, const std::string& to) {
  return text.replace(text.find(from), from.size(), to);
}
std::string with_line_ends(const std::string& text, const std::string& end) {
  std::string out;
  for (char c : text) out += c == '\n' ? end : std::string(1, c);
  return out;
}

}  // namespace

TEST(WeatherFile, ReadsTheDryBulbOfEveryHourAndThePlace) {
  const auto year = weather_from_epw(epw(false));
  ASSERT_TRUE(year) << year.error().message();
  EXPECT_EQ(year->value.name, "Anywhere Airport, USA");
  ASSERT_EQ(year->value.outdoor.size(), 8760u);
  for (int h = 0; h < 8760; ++h) ASSERT_NEAR(year->value.outdoor[h], -20 + 0.005 * h, 1e-9) << h;
  EXPECT_TRUE(year->remarks.empty());
}

TEST(WeatherFile, LeapDayIsLeftOutAndSaid) {
  const auto year = weather_from_epw(epw(true));
  ASSERT_TRUE(year) << year.error().message();
  EXPECT_EQ(year->value, weather_from_epw(epw(false))->value);
  ASSERT_EQ(year->remarks.size(), 1u);
  EXPECT_EQ(year->remarks[0].code, "weather_file_leap_day");
}

TEST(WeatherFile, LinesMayEndInEveryWay) {
  const WeatherYear plain = weather_from_epw(epw(false))->value;
  for (const char* end : {"\r\n", "\r"})
    EXPECT_EQ(weather_from_epw(with_line_ends(epw(false), end))->value, plain);
  EXPECT_EQ(weather_from_epw("\xEF\xBB\xBF" + epw(false) + "\n\n")->value, plain);
}

TEST(WeatherFile, GroundTemperaturesMayBeMissing) {
  const std::string text = epw(false);
  const std::size_t start = text.find("GROUND"), end = text.find('\n', start) + 1;
  EXPECT_TRUE(weather_from_epw(text.substr(0, start) + text.substr(end)));
}

TEST(WeatherFile, RefusalsSayWhereAndWhat) {
  const std::string good = epw(false);
  const std::string row = "1992,2,3,5,60,C9C9*0?9E8,-16.020,";  // the 797th hour
  const auto with = [&](const std::string& other) { return swapped(good, row, other); };
  struct Case {
    std::string text, thing, value, bound;
  };
  const std::string flags = ",60,C9C9*0?9E8,";
  const std::vector<Case> cases = {
      {"", "first line of the weather file", "missing", "LOCATION and a place"},
      {"PK\x03\x04zip", "first line of the weather file", "“PKzip”", "LOCATION and a place"},
      {kHeader.substr(0, 200), "header of the weather file", "without a DATA PERIODS line",
       "LOCATION to DATA PERIODS, eight lines"},
      {kHeader, "weather file", "0 hours long", "8760 hours long"},
      {epw(false, 5000), "weather file", "5000 hours long, the last 28 July, hour 8 in line 5008",
       "8760 hours long"},
      {epw(false, 8759), "weather file", "8759 hours long, the last 31 December, hour 23 in line 8767",
       "8760 hours long"},
      {good.substr(0, good.find(row) + 20), "line 805 of the weather file",
       "6 fields, after 3 February, hour 4", "eight fields or more"},
      {good + "1992,1,1,1" + flags + "5,6\n", "line 8769 of the weather file", "1 January, hour 1",
       "absent, for the year is complete"},
      {with("1992,2,3,6" + flags + "-15.94,"), "hour in line 805 of the weather file", "3 February, hour 6",
       "3 February, hour 5"},
      {with("1992,2,3,4" + flags + "-15.94,"), "hour in line 805 of the weather file", "3 February, hour 4",
       "3 February, hour 5"},
      {with("1992,13,3,5" + flags + "-15.94,"), "month in line 805 of the weather file", "“13”",
       "a whole number from 1 to 12"},
      {with("1992,2,3,5.5" + flags + "-15.94,"), "hour in line 805 of the weather file", "“5.5”",
       "a whole number from 1 to 24"},
      {with("1992,2,3,5" + flags + "cold,"), "dry bulb in line 805 of the weather file", "“cold”",
       "a number"},
      {with("1992,2,3,5" + flags + ","), "dry bulb in line 805 of the weather file", "“”", "a number"},
      {with("1992,2,3,5" + flags + "nan,"), "dry bulb in line 805 of the weather file", "“nan”", "a number"},
      {with("1992,2,3,5" + flags + "99.9,"), "dry bulb in line 805 of the weather file",
       "“99.9”, which stands for a missing value", "measured"},
      {with("1992,2,3,5" + flags + "-71,"), "dry bulb in line 805 of the weather file", "“-71” C",
       "above -70 C and below 70 C"},
      {with("1992,2,3,5" + flags + "70,"), "dry bulb in line 805 of the weather file", "“70” C",
       "above -70 C and below 70 C"},
      {swapped(good, "DATA PERIODS,1,1", "DATA PERIODS,1,4"), "DATA PERIODS in line 8 of the weather file",
       "“DATA PERIODS,1,4,Data,Sunday, 1/ 1,12/31”", "one period, one record an hour"},
  };
  for (const Case& c : cases) {
    const auto year = weather_from_epw(c.text);
    ASSERT_FALSE(year) << c.thing << " " << c.value;
    EXPECT_EQ(year.error().thing, c.thing);
    EXPECT_EQ(year.error().value, c.value);
    EXPECT_EQ(year.error().bound, c.bound);
    EXPECT_FALSE(year.error().advice.empty());
  }
}

// Seed 12. Most are the first days only: what is beyond is the same again.
TEST(WeatherFile, TenThousandSpoiledTextsAreReadOrRefused) {
  std::mt19937 random(12);
  const std::string year = epw(false), days = epw(false, 60);
  int refused = 0;
  for (int i = 0; i < 10000; ++i) {
    const auto file = weather_from_epw(mutated(i % 50 == 0 ? year : days, random));
    if (!file) {
      ++refused;
      EXPECT_FALSE(file.error().message().empty());
    } else {
      EXPECT_EQ(file->value.outdoor.size(), 8760u);
    }
  }
  EXPECT_GT(refused, 9000);
  EXPECT_LT(refused, 10000);  // most columns are not looked at
}
