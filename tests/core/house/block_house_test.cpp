// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/block_house.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>

using namespace underlawn;

namespace {

BlockHouse bungalow() {
  BlockHouse h;
  h.surfaces = {{"Walls", 120, 0.3}, {"Windows", 20, 1.6}, {"Roof", 90, 0.2}};
  h.volume = 450;
  h.air_change = 0.5;
  h.gains = 600;
  return h;
}
constexpr double kUa = 36 + 32 + 18 + 1.2 * 1006 / 3600 * 225;

}  // namespace

TEST(BlockHouse, AddsSurfacesAndAir) {
  EXPECT_NEAR(loss_coefficient(bungalow()), kUa, 1e-9);
  EXPECT_NEAR(block_heat_loss(bungalow()), 35 * kUa, 1e-9);
  EXPECT_NEAR(balance_temperature(bungalow(), 20), 20 - 600 / kUa, 1e-12);
}

TEST(BlockHouse, DesignLoadCarriesBothDays) {
  const DesignLoad load = design_load_from_block(bungalow()).value();
  EXPECT_NEAR(load.heat_loss, 35 * kUa, 1e-9);
  EXPECT_NEAR(load.heat_gain, 9 * kUa + 600 + 2000, 1e-9);
  EXPECT_NEAR(load.balance_cooling, 24 - 600 / kUa, 1e-12);
  EXPECT_EQ(load.outdoor_cold, -15);
  EXPECT_EQ(load.outdoor_warm, 33);
}

TEST(BlockHouse, FloorAreaAndHeightStandForTheVolume) {
  BlockHouse h = bungalow();
  h.volume = 0;
  h.floor_area = 150;
  h.ceiling_height = 3;
  EXPECT_NEAR(loss_coefficient(h), kUa, 1e-9);
}

TEST(BlockHouse, GainsTakenOffMakeTheYearDegreeDaysExactly) {
  WeatherYear year{"a slope", {}};
  for (int hour = 0; hour < kWeatherHours; ++hour) year.outdoor.push_back(-20 + hour * 0.005);
  const DesignLoad load = design_load_from_block(bungalow(), GainsAtDesign::taken_off).value();
  double sum = 0;  // Wh
  for (double w : hourly_load(load, year).heating) sum += w;
  EXPECT_NEAR(sum, kUa * 24 * heating_degree_days(year, 20 - 600 / kUa), 1e-9 * sum);
}

TEST(BlockHouse, AHouseThatIsNotCooledNeedsNoWarmDay) {
  BlockHouse h = bungalow();
  h.cooled = false;
  h.outdoor_warm = std::nan("");
  const DesignLoad load = design_load_from_block(h).value();
  EXPECT_EQ(load.heat_gain, 0);
  for (double w : hourly_load(load, {"hot", {20, 33, 60}}).cooling) EXPECT_EQ(w, 0);
}

TEST(BlockHouse, RefusalsNameTheField) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const std::vector<std::pair<std::string, std::function<void(BlockHouse&)>>> cases = {
      {"list of surfaces", [](BlockHouse& h) { h.surfaces.clear(); }},
      {"area of surface “Walls”", [](BlockHouse& h) { h.surfaces[0].area = -1; }},
      {"area of surface 3",
       [](BlockHouse& h) {
         h.surfaces[2] = {"", 0, 1};
       }},
      {"U-value of surface “Windows”", [](BlockHouse& h) { h.surfaces[1].u_value = 16; }},
      {"U-value of surface “Roof”", [&](BlockHouse& h) { h.surfaces[2].u_value = nan; }},
      {"heated volume", [](BlockHouse& h) { h.volume = 0; }},
      {"heated volume", [](BlockHouse& h) { h.volume = -3; }},
      {"ceiling height", [](BlockHouse& h) { h.volume = 0, h.floor_area = 100, h.ceiling_height = 25; }},
      {"air change", [](BlockHouse& h) { h.air_change = -0.1; }},
      {"internal gains", [&](BlockHouse& h) { h.gains = nan; }},
      {"indoor temperature for heating", [](BlockHouse& h) { h.indoor_heating = 68; }},
      {"cold design day", [](BlockHouse& h) { h.outdoor_cold = -90; }},
      {"cold design day", [](BlockHouse& h) { h.gains = 50000; }},
      {"sun at the warm design day", [](BlockHouse& h) { h.solar_gains = -5; }},
      {"moisture gains", [](BlockHouse& h) { h.moisture_gains = 1e9; }},
      {"indoor temperature for cooling", [](BlockHouse& h) { h.indoor_cooling = 18; }},
      {"warm design day", [](BlockHouse& h) { h.outdoor_warm = 15; }},
      {"warm design day", [](BlockHouse& h) { h.outdoor_warm = 91; }}};
  for (const auto& [thing, spoil] : cases) {
    BlockHouse h = bungalow();
    spoil(h);
    const auto load = design_load_from_block(h);
    ASSERT_FALSE(load) << thing;
    EXPECT_EQ(load.error().thing, thing) << load.error().message();
    EXPECT_FALSE(load.error().bound.empty() || load.error().advice.empty()) << thing;
  }
}
