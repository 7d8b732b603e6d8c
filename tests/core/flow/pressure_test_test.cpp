// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/pressure_test.h"

#include "flow/test_procedure.h"

namespace underlawn {
namespace {

LoopVolume loop_of(double dr) {
  return {{{"pipe", 0.0215, 0.0267, dr, 500}}};
}

double end_pressure(const LoopVolume& loop, const LoopState& state,
                    const TestProgramme& test = hold_then_shut_in(600e3)) {
  return test_curve(test, loop, state).value().pressure.back();
}

}  // namespace

TEST(PressureTest, WhatALeakTakesDuringTheHoldIsMadeUp) {
  const TestProgramme test = hold_then_shut_in(600e3);
  LoopState leaking;
  leaking.leak = 1e-6;
  leaking.leak_pressure = 600e3;
  const TestCurve sound = test_curve(test, loop_of(11), {}).value();
  const TestCurve leaks = test_curve(test, loop_of(11), leaking).value();
  const auto more = [&](double t) { return leaks.added_at(t) - sound.added_at(t); };
  EXPECT_NEAR(more(60 + 1800) - more(60), 1e-6 * 1800, 1e-10);
  EXPECT_NEAR(more(60), 1e-6 * 60 * 2 / 3, 1e-6);  // root of a straight rise
  EXPECT_LT(leaks.pressure.back(), sound.pressure.back());
}

TEST(PressureTest, AirTakesWhatBoylesLawSays) {
  const TestProgramme test = hold_then_shut_in(600e3);
  LoopState airy;
  airy.air = 0.01;
  const double more = test_curve(test, loop_of(11), airy).value().added_at(1000) -
                      test_curve(test, loop_of(11), {}).value().added_at(1000);
  EXPECT_NEAR(more, 0.01 * loop_volume(loop_of(11)) * 600e3 / (600e3 + kAtmosphere), 1e-9);
}

TEST(PressureTest, SizesCountByWhatTheyHold) {
  LoopVolume both = loop_of(9);
  both.pipes.push_back(loop_of(17).pipes.front());
  const double thick = end_pressure(loop_of(9), {}), thin = end_pressure(loop_of(17), {});
  EXPECT_NE(thick, thin);
  EXPECT_GT(end_pressure(both, {}), std::min(thick, thin));
  EXPECT_LT(end_pressure(both, {}), std::max(thick, thin));
  EXPECT_NEAR(loop_compliance(both, 0.45), (bore_compliance(9, 0.45) + bore_compliance(17, 0.45)) / 2, 1e-9);
}

TEST(PressureTest, WarmingLowersAndCoolingRaises) {
  LoopState warming, cooling;
  warming.temperature = {{1860, 15}, {3660, 16}};
  cooling.temperature = {{1860, 15}, {3660, 14}};
  const double steady = end_pressure(loop_of(11), {});
  const double slope = pressure_per_kelvin(loop_of(11), {}, 600e3, 1800).value();
  EXPECT_NEAR(end_pressure(loop_of(11), warming) - steady, slope, 0.25 * -slope);
  EXPECT_NEAR(end_pressure(loop_of(11), cooling) - steady, -slope, 0.25 * -slope);
}

TEST(PressureTest, ABurstLoopStandsAtNoPressure) {
  LoopState burst;
  burst.leak = 0.01;
  burst.leak_pressure = 600e3;
  EXPECT_EQ(end_pressure(loop_of(11), burst), 0);
}

TEST(PressureTest, ScalesWithPressureWhereThereIsNoAir) {
  EXPECT_NEAR(end_pressure(loop_of(11), {}, hold_then_shut_in(300e3)) * 2, end_pressure(loop_of(11), {}),
              0.5);
}

TEST(PressureTest, RefusesWhatItCannotReckon) {
  const TestProgramme good = hold_then_shut_in(600e3);
  const auto code = [](const auto& r) { return r ? std::string("ok") : r.error().code; };
  EXPECT_EQ(code(test_curve(good, {}, {})), "loop_empty");
  EXPECT_EQ(code(test_curve(good, {{{"p", 0.03, 0.02, 11, 1}}}, {})), "loop_bore");
  EXPECT_EQ(code(test_curve(good, {{{"p", 0.02, 0.03, 11, -1}}}, {})), "loop_length");
  EXPECT_EQ(code(test_curve(good, loop_of(2), {})), "loop_dr");
  EXPECT_EQ(code(test_curve({"", {}}, loop_of(11), {})), "test_phases");
  EXPECT_EQ(code(test_curve({"", {{PhaseKind::hold, 9, 0}}}, loop_of(11), {})), "test_phases");
  EXPECT_EQ(code(test_curve({"", {{PhaseKind::pump, 9, 1e5}}}, loop_of(11), {})), "test_phases");
  EXPECT_EQ(code(test_curve(hold_then_shut_in(600e3, -1), loop_of(11), {})), "test_duration");
  EXPECT_EQ(code(test_curve(hold_then_shut_in(NAN), loop_of(11), {})), "test_phase_pressure");
  LoopState bad;
  bad.temperature = {{0, -3}};
  EXPECT_EQ(code(test_curve(good, loop_of(11), bad)), "water_temperature");
  bad.temperature = {};
  EXPECT_EQ(code(test_curve(good, loop_of(11), bad)), "test_temperature_none");
  bad.temperature = {{5, 10}, {5, 11}};
  EXPECT_EQ(code(test_curve(good, loop_of(11), bad)), "test_temperature_order");
  bad = {};
  bad.air = NAN;
  EXPECT_EQ(code(test_curve(good, loop_of(11), bad)), "test_air");
  bad = {};
  bad.leak = 1e-6;
  EXPECT_EQ(code(test_curve(good, loop_of(11), bad)), "test_leak_pressure");
  bad = {};
  bad.creep.exponent = 0;
  EXPECT_EQ(code(test_curve(good, loop_of(11), bad)), "creep_exponent");
}

}  // namespace underlawn
