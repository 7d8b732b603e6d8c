// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/load.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace underlawn;

namespace {
MonthlyNormals cold_town() {
  return {"made for this test",
          {-9, -7, -1, 7, 13, 18, 21, 20, 15, 9, 2, -6},
          {10, 10, 10, 12, 12, 12, 12, 12, 11, 11, 9, 9}};
}
}  // namespace

TEST(Weather, MonthsKeepTheirNormals) {
  const WeatherYear year = year_from_normals(cold_town()).value();
  ASSERT_EQ(year.outdoor.size(), 8760u);
  double january = 0, july = 0;
  for (int h = 0; h < 744; ++h) january += year.outdoor[h] / 744;
  for (int h = 0; h < 744; ++h) july += year.outdoor[181 * 24 + h] / 744;
  EXPECT_NEAR(january, -9, 1e-9);
  EXPECT_NEAR(july, 21, 1e-9);
}

TEST(Weather, YearlyWaveFindsACosineAgain) {
  WeatherYear year;
  for (int h = 0; h < kWeatherHours; ++h)
    year.outdoor.push_back(8 - 12.5 * std::cos(2 * M_PI * ((h + 0.5) / 24 - 21) / 365));
  const YearlyWave wave = yearly_wave(year);
  EXPECT_NEAR(wave.mean, 8, 1e-9);
  EXPECT_NEAR(wave.amplitude, 12.5, 1e-9);
  EXPECT_NEAR(wave.coldest_day, 21, 1e-6);
}

TEST(Weather, RefusesNormalsOfNoPlaceOnEarth) {
  MonthlyNormals normals = cold_town();
  normals.mean[4] = 130;
  EXPECT_EQ(year_from_normals(normals).error().thing, "normals of month 5");
}

// Steady degree-day form, E = UA 24 DD (ASHRAE Fundamentals, from memory): the hourly sum is the same thing.
TEST(Load, HourlyHeatIsDegreeDaysTimesTheLossCoefficient) {
  const WeatherYear year = year_from_normals(cold_town()).value();
  const DesignLoad load{12000, -20, 16, 0, 33, 20};
  double sum = 0;
  for (double w : hourly_load(load, year).heating) sum += w;  // Wh
  EXPECT_NEAR(sum, 12000.0 / 36 * 24 * heating_degree_days(year, 16), 1e-6 * sum);
}

TEST(Load, DesignDayGivesTheDesignLoads) {
  WeatherYear year{"two hours", {-15, 33}};
  const HourlyLoad l = hourly_load(DesignLoad{10000, -15, 16, 8000, 33, 20}, year);
  EXPECT_NEAR(l.heating[0], 10000, 1e-9);
  EXPECT_EQ(l.heating[1], 0);
  EXPECT_NEAR(l.cooling[1], 8000, 1e-9);
}

TEST(Load, RefusesADesignDayBeyondItsBalance) {
  DesignLoad load;
  load.outdoor_cold = 18;
  EXPECT_EQ(check_load(load).error().code, "load_design_day");
  load = {};
  load.heat_gain = std::nan("");
  EXPECT_EQ(check_load(load).error().code, "load_not_positive");
}

TEST(Load, NoLoadIsNoneOnEveryDay) {
  DesignLoad load;
  load.heat_gain = 0;
  load.outdoor_warm = load.balance_cooling;
  ASSERT_TRUE(check_load(load));
  for (double w : hourly_load(load, {"two hours", {10, 40}}).cooling) EXPECT_EQ(w, 0);
}
