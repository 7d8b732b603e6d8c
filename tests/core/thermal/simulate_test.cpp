// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/simulate.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

using namespace underlawn;

namespace {

SimulationInput small_house() {
  SimulationInput in;
  in.loop.response = {{0.03, 0.06, 0.1, 0.16, 0.2}, {1800, 2e4, 3e5, 4e6, 6e7}};
  in.loop.pipe = 900;
  in.loop.fluid_resistance = 0.12;
  in.loop.heat_flow_rate = 2400;
  in.unit = generic_heat_pump();
  in.pump_power = 180;
  in.years = 3;
  for (int h = 0; h < kYearHours; ++h) {
    const double season = std::cos(2 * std::numbers::pi * (h / 24.0 - 20) / 365);
    const double day = std::cos(2 * std::numbers::pi * (h - 15) / 24.0);
    in.loop.ground.push_back(10 - 4 * std::cos(2 * std::numbers::pi * (h / 24.0 - 70) / 365));
    const double outside = 10 - 14 * season + 5 * day;
    in.house.heating.push_back(std::max(0.0, 480 * (16 - outside)));
    in.house.cooling.push_back(std::max(0.0, 350 * (outside - 21)));
  }
  return in;
}

}  // namespace

TEST(Simulate, EnergyClosesEveryYear) {
  const Simulation s = simulate(small_house());
  ASSERT_EQ(s.years.size(), 3u);
  for (const YearSum& y : s.years) {
    EXPECT_GT(y.backup, 0);  // the coldest hours are beyond the unit
    EXPECT_NEAR((y.from_ground + y.heating_power + y.backup) / y.heating, 1, 1e-9);
    EXPECT_NEAR((y.to_ground - y.cooling_power + y.unmet_cooling) / y.cooling, 1, 1e-9);
  }
}

// The recursion against superposition of every hour's heat with the same R, and the heat pump equation of
// each hour.
TEST(Simulate, EnteringTemperatureAgreesWithDirectSuperposition) {
  SimulationInput in = small_house();
  in.years = 2;
  const Simulation s = simulate(in);
  std::vector<double> q;
  for (const auto* year : {&s.first, &s.last})
    for (const HourState& h : *year) q.push_back(h.ground_heat / in.loop.pipe);
  for (int j : {5, 300, 700, 4200, 8759, 9000, 12000, 17519}) {
    double wall = in.loop.ground[j % kYearHours];
    for (int m = 0; m <= j; ++m)
      wall -= q[m] * (in.loop.response(3600.0 * (j - m + 1)) - in.loop.response(3600.0 * (j - m)));
    const HourState& h = j < kYearHours ? s.first[j] : s.last[j - kYearHours];
    const double full = (h.entering - h.leaving) * in.loop.heat_flow_rate;
    const double entering =
        wall - full * in.loop.fluid_resistance / in.loop.pipe + (h.entering - h.leaving) / 2;
    EXPECT_NEAR(h.entering, entering, 1e-4) << "hour " << j;
  }
}

TEST(Simulate, LongerPipeNeverEntersColder) {
  double before = -1e9;
  for (double pipe : {400.0, 600.0, 900.0, 1500.0}) {
    SimulationInput in = small_house();
    in.loop.pipe = pipe;
    const double coldest = simulate(in).coldest;
    EXPECT_GT(coldest, before);
    before = coldest;
  }
}

TEST(Simulate, HoursBeyondThePerformanceTableAreCounted) {
  SimulationInput in = small_house();
  in.loop.pipe = 150;
  const Simulation s = simulate(in);
  EXPECT_LT(s.coldest, -5);
  EXPECT_GT(s.years[0].hours_outside_table, 0);
}
