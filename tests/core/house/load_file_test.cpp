// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/load_file.h"

#include <gtest/gtest.h>

#include <functional>

#include "house/weather.h"
#include "support/mutated_text.h"

using namespace underlawn;

namespace {

std::string table(const std::string& header, int rows, const std::function<std::string(int)>& row) {
  std::string text = header + "\n";
  for (int h = 0; h < rows; ++h) text += row(h) + "\n";
  return text;
}
std::string plain(int rows) {
  return table("hour,heating_w,cooling_w", rows,
               [](int h) { return std::to_string(h) + "," + std::to_string(h % 7) + ",0"; });
}
std::string swapped(std::string text, const std::string& from, const std::string& to) {
  return text.replace(text.find(from), from.size(), to);
}

// ISO times through a year, written without the code under test.
std::string timed(int year, int rows) {
  const int days[] = {31, year % 4 == 0 ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  std::string text = "timestamp,ground_kw\n";
  int h = 0;
  for (int m = 0; m < 12; ++m)
    for (int d = 0; d < days[m]; ++d)
      for (int hour = 0; hour < 24 && h < rows; ++hour, ++h) {
        char line[60];
        std::snprintf(line, sizeof line, "%d-%02d-%02dT%02d:00,%d\n", year, m + 1, d + 1, hour,
                      m == 1 && d == 28 ? 99 : 1);
        text += line;
      }
  return text;
}

}  // namespace

TEST(LoadFile, ReadsHeatingAndCooling) {
  const auto file = loads_from_csv(plain(8760), "from a program");
  ASSERT_TRUE(file) << file.error().message();
  EXPECT_EQ(file->value.name, "from a program");
  ASSERT_EQ(file->value.heating.size(), 8760u);
  EXPECT_EQ(file->value.heating[13], 6);
  EXPECT_EQ(file->value.cooling, std::vector<double>(8760));
  EXPECT_TRUE(file->value.ground.empty());
  EXPECT_TRUE(file->remarks.empty());
}

// 1 Btu/h is 0.29307107 W (NIST SP 811, B.8).
TEST(LoadFile, UnitsAreThoseOfTheColumnsName) {
  const auto file = loads_from_csv(
      table("Heating kW;Cooling BTUH", 8760, [](int) { return std::string("1,25;1000"); }), "");
  ASSERT_TRUE(file) << file.error().message();
  EXPECT_EQ(file->value.heating[8759], 1250);
  EXPECT_NEAR(file->value.cooling[0], 293.07107, 1e-4);
}

TEST(LoadFile, GroundLoadHasASign) {
  const auto file =
      loads_from_csv(table("ground_w", 8760, [](int h) { return std::to_string(h % 3 - 1); }), "");
  ASSERT_TRUE(file) << file.error().message();
  EXPECT_EQ(file->value.ground[0], -1);
  EXPECT_EQ(file->value.ground[2], 1);
  EXPECT_TRUE(file->value.heating.empty());
}

TEST(LoadFile, OneLoadLeavesTheOtherAtNought) {
  const auto file = loads_from_csv(table("cooling_w", 8760, [](int) { return std::string("5"); }), "");
  ASSERT_TRUE(file) << file.error().message();
  EXPECT_EQ(file->value.heating, std::vector<double>(8760));
}

TEST(LoadFile, LeapDayIsLeftOutAndSaid) {
  const auto file = loads_from_csv(timed(2024, 9000), "");
  ASSERT_TRUE(file) << file.error().message();
  EXPECT_EQ(file->value.ground, std::vector<double>(8760, 1000));  // that day had 99 kW
  ASSERT_EQ(file->remarks.size(), 1u);
  EXPECT_EQ(file->remarks[0].thing, "29 February of the load file");
}

TEST(LoadFile, HoursMayRunThroughEachDay) {
  for (int first : {0, 1}) {
    const auto row = [&](int h) { return std::to_string(h % 24 + first) + "\t3"; };
    EXPECT_TRUE(loads_from_csv(table("hour\theating_w", 8760, row), ""));
  }
}

TEST(LoadFile, OtherDatesAndColumnsAreSaidToBeUnread) {
  const auto file =
      loads_from_csv(table("date,heating_w,note", 8760, [](int) { return std::string("1 Jan,4,x"); }), "");
  ASSERT_TRUE(file) << file.error().message();
  ASSERT_EQ(file->remarks.size(), 2u);
  EXPECT_EQ(file->remarks[0].code, "load_file_times");
  EXPECT_EQ(file->remarks[1].thing, "column “note” of the load file");
}

TEST(LoadFile, WhatIsWrittenReadsBackTheSame) {
  HourlyFile house{"h", std::vector<double>(8760), std::vector<double>(8760, 0.1), {}};
  for (int h = 0; h < 8760; ++h) house.heating[h] = 1e4 / (h + 1);
  EXPECT_EQ(loads_from_csv(loads_to_csv(house), "h")->value, house);
  HourlyFile ground{"g", {}, {}, std::vector<double>(8760, -1.0 / 3)};
  EXPECT_EQ(loads_from_csv(loads_to_csv(ground), "g")->value, ground);
}

TEST(LoadFile, RefusalsSayWhereAndWhat) {
  struct Case {
    std::string text, thing, value;
  };
  const std::string good = plain(8760);
  const std::vector<Case> cases = {
      {plain(8759), "load file", "8759 rows, the last in line 8760"},
      {plain(8761), "load file", "8761 rows, the last in line 8762"},
      {"", "load file", "empty"},
      {swapped(good, "\n700,", "\n701,"), "hour in line 702 of the load file", "“701”"},
      {swapped(good, "\n700,0,0", ""), "hour in line 702 of the load file", "“701”"},
      {swapped(good, "\n700,0", "\n,0"), "hour in line 702 of the load file", "“”"},
      {swapped(good, "\n700,0", "\n700,much"), "heating_w in line 702 of the load file (row 701)", "“much”"},
      {swapped(good, "\n700,0", "\n700,-3"), "heating_w in line 702 of the load file (row 701)", "“-3”"},
      {swapped(good, "\n700,0", "\n700,nan"), "heating_w in line 702 of the load file (row 701)", "“nan”"},
      {swapped(good, "\n700,0", "\n700,2e6"), "heating_w in line 702 of the load file (row 701)", "“2e6”"},
      {swapped(good, "\n700,0,0", "\n700,0"), "cooling_w in line 702 of the load file (row 701)", "missing"},
      {swapped(good, "cooling_w", "heating_kw"), "column of heating load", "there twice"},
      {swapped(good, "cooling_w", "ground_w"), "load file", "loads of the house and of the ground"},
      {swapped(good, "hour,heating_w,cooling_w\n", ""), "first line of the load file", "“0, 0, 0”"},
      {table("heating_w", 8760, [](int) { return std::string("0"); }), "load file", "0 W in every hour"},
      {swapped(timed(2023, 9000), "2023-07-04T05:00,1\n", ""), "hour in line 4423 of the load file",
       "“2023-07-04T06:00”"},
  };
  for (const Case& c : cases) {
    const auto file = loads_from_csv(c.text, "");
    ASSERT_FALSE(file) << c.thing << " " << c.value;
    EXPECT_EQ(file.error().thing, c.thing);
    EXPECT_EQ(file.error().value, c.value);
    EXPECT_FALSE(file.error().bound.empty() || file.error().advice.empty()) << c.thing;
  }
}

// Seed 11. Nine in ten are the first rows only, which is where the text of a table is taken apart.
TEST(LoadFile, TenThousandSpoiledTextsAreReadOrRefused) {
  std::mt19937 random(11);
  const std::string year = plain(8760), rows = plain(40), times = timed(2023, 40);
  int refused = 0;
  for (int i = 0; i < 10000; ++i) {
    const auto file = loads_from_csv(mutated(i % 10 == 0 ? year : i % 2 == 0 ? rows : times, random), "x");
    if (!file) {
      ++refused;
      EXPECT_FALSE(file.error().message().empty());
    } else {
      EXPECT_EQ(file->value.heating.size(), 8760u);
      EXPECT_EQ(file->value.cooling.size(), 8760u);
    }
  }
  EXPECT_GT(refused, 9000);
  EXPECT_LT(refused, 10000);  // a changed digit is no reason to refuse
}
