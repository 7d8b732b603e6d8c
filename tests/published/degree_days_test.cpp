// SPDX-License-Identifier: GPL-3.0-or-later
// The steady house of degree-days against worked examples, in the units they were published in.
#include <gtest/gtest.h>

#include "house/block_house.h"

using namespace underlawn;

namespace {

constexpr double kBtu = 1055.05585262;       // J, NIST SP 811
constexpr double kBtuPerHour = kBtu / 3600;  // W
double celsius(double fahrenheit) {
  return (fahrenheit - 32) / 1.8;
}

// A house without gains or air change whose envelope takes `ua` W/K.
BlockHouse bare_house(double ua) {
  BlockHouse h;
  h.surfaces = {{"Walls", ua, 1}};
  h.volume = 1;
  h.air_change = 0;
  h.gains = 0;
  h.cooled = false;
  h.indoor_heating = celsius(65);
  h.outdoor_cold = celsius(25);
  return h;
}

double heat_of_year(const BlockHouse& house, double outdoor) {  // Btu
  const WeatherYear year{"always the same", std::vector<double>(kWeatherHours, outdoor)};
  double sum = 0;
  for (double w : hourly_load(design_load_from_block(house).value(), year).heating) sum += w / kBtuPerHour;
  return sum;
}

}  // namespace

// HyperPhysics, "Heat loss through walls" and "Degree days" (Georgia State University): 674 Btu/h at a
// difference of 40 F is 16 168 Btu a day and 404 Btu per degree-day; 674 x 24 is 16 176, its text rounds.
TEST(PublishedDegreeDays, WallsOfHyperPhysics) {
  const BlockHouse walls = bare_house(674 * kBtuPerHour / (40 / 1.8));
  EXPECT_NEAR(design_load_from_block(walls).value().heat_loss / kBtuPerHour, 674, 0.01);
  const double day = heat_of_year(walls, celsius(25)) / 365;
  EXPECT_NEAR(day, 16168, 10);
  EXPECT_NEAR(day / 40, 404, 0.5);
}

// The same: a house of 25 000 Btu per degree-day in a season of 2980 degree-days takes 7.45e7 Btu.
TEST(PublishedDegreeDays, SeasonOfHyperPhysics) {
  const BlockHouse house = bare_house(25000 / 24.0 * kBtuPerHour * 1.8);
  EXPECT_NEAR(heat_of_year(house, celsius(65 - 2980.0 / 365)), 7.45e7, 1e3);
}

// Heat per degree-day is the design loss x 24 / the design difference (Moaveni, Engineering Fundamentals,
// ch. 11): whatever the loss, with 60 000 Btu/h at 65 F difference 22 154 Btu.
TEST(PublishedDegreeDays, HeatPerDegreeDayFromTheDesignLoss) {
  BlockHouse house = bare_house(60000 * kBtuPerHour / (65 / 1.8));
  house.outdoor_cold = celsius(0);
  const double degree_days = 20 * 365;
  EXPECT_NEAR(heat_of_year(house, celsius(45)) / degree_days, 60000 * 24 / 65.0, 0.1);
}
