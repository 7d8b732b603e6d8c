// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/simulate_given.h"

#include <gtest/gtest.h>

#include <cmath>

namespace underlawn {
namespace {

LoopModel loop() {
  LoopModel l;
  l.response = {{0.3, 0.8, 1.5}, {3600.0 * 5, 3600.0 * 800, 3600.0 * 20000}};
  l.pipe = 900;
  l.fluid_resistance = 0.5;
  l.heat_flow_rate = 2000;
  l.ground.assign(kYearHours, 9.0);
  return l;
}

// Superposition written out: every past hour's change of heat times R at its age.
double wall_by_sum(const LoopModel& l, const std::vector<double>& load, int hour) {
  double fall = 0, before = 0;
  for (int m = 0; m <= hour; ++m) {
    const double q = load[static_cast<std::size_t>(m % kYearHours)] / l.pipe;
    fall += (q - before) * l.response(3600.0 * (hour + 1 - m));
    before = q;
  }
  return l.ground[0] - fall;
}

}  // namespace

TEST(SimulateGroundLoad, IsSuperpositionHourByHour) {
  const LoopModel l = loop();
  std::vector<double> load(kYearHours);
  for (int h = 0; h < kYearHours; ++h) load[h] = h % 5 == 0 ? 0 : 3000 * std::sin(h / 700.0) + 500;
  const Simulation s = simulate_ground_load(l, load, 2);
  for (int h : {1, 2, 48, 3001, 8759}) {
    const double wall = wall_by_sum(l, load, h), q = load[h];
    EXPECT_NEAR(s.first[h].entering, wall - q * 0.5 / 900 + q / 4000, 1e-9) << h;
    EXPECT_NEAR(s.first[h].entering - s.first[h].leaving, q / 2000, 1e-9);
  }
  EXPECT_NEAR(s.last[100].leaving, wall_by_sum(l, load, kYearHours + 100), 1e-9);  // an hour at rest
}

TEST(SimulateGroundLoad, SumsWhatWasTakenAndGiven) {
  std::vector<double> load(kYearHours, 0.0);
  load[10] = 2000;
  load[20] = -500;
  const Simulation s = simulate_ground_load(loop(), load, 1);
  EXPECT_DOUBLE_EQ(s.years[0].from_ground, 2000 * 3600.0);
  EXPECT_DOUBLE_EQ(s.years[0].to_ground, 500 * 3600.0);
  EXPECT_EQ(s.years[0].coldest_hour, 10);
  EXPECT_EQ(s.years[0].warmest_hour, 20);
  EXPECT_EQ(s.coldest, s.years[0].coldest);
}

}  // namespace underlawn
