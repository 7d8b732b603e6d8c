// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/test_band.h"

#include "flow/test_procedure.h"

namespace underlawn {
namespace {

const LoopVolume kLoop = {{{"pipe", 0.0215, 0.0267, 11, 1000}}};

double visible(const TestProgramme& programme, const TestBounds& bounds = {}) {
  const BandTest test = prepare_band(programme, {}, bounds).value();
  return smallest_visible_leak(test, kLoop, {}, bounds).value();
}

}  // namespace

TEST(TestBand, HoldsTheExpectedCurveAndEveryCorner) {
  const TestProgramme programme = long_hold_then_shut_in(600e3);
  const BandTest test = prepare_band(programme, {}, {}).value();
  const TestBand band = test_band(test, kLoop, {}, {}).value();
  const auto corners = band_corners(programme, {}, {});
  EXPECT_EQ(corners.size(), 16u);
  for (const Corner& corner : corners) {
    const TestCurve curve = test_curve(test.of(corner.exponent), kLoop, corner.state).value();
    for (double t = shut_in_start(programme); t <= programme_end(programme); t += 60) {
      EXPECT_LE(band.low_at(t), curve.pressure_at(t));
      EXPECT_GE(band.high_at(t), curve.pressure_at(t));
      EXPECT_LE(band.low_at(t), band.expected.pressure_at(t));
    }
  }
}

TEST(TestBand, ASmallestVisibleLeakJustLeavesTheBand) {
  const TestProgramme programme = hold_then_shut_in(600e3);
  const BandTest test = prepare_band(programme, {}, {}).value();
  const TestBand band = test_band(test, kLoop, {}, {}).value();
  const double leak = smallest_visible_leak(test, kLoop, {}, {}).value(), end = programme_end(programme);
  EXPECT_LT(leak_curve(test, kLoop, {}, 1.02 * leak)->pressure_at(end), band.low_at(end));
  EXPECT_GT(leak_curve(test, kLoop, {}, 0.98 * leak)->pressure_at(end), band.low_at(end));
}

// ASTM F2164's own form: a hold, 10 psi let off, an hour shut in. What lifts the band above the expected
// curve is the kelvin it may have cooled, by the law of expansion and softening, and the gauge's half psi.
TEST(TestBand, RisesByTemperatureAlone) {
  const TestProgramme programme = rebound_test(600e3);
  TestBounds still;
  still.temperature_drift = 0;
  const double end = programme_end(programme), hour = end - shut_in_start(programme);
  const auto lift = [&](const TestBounds& bounds) {
    const TestBand band = test_band(prepare_band(programme, {}, bounds).value(), kLoop, {}, bounds).value();
    return band.high_at(end) - band.expected.pressure_at(end) - bounds.gauge;
  };
  const double kelvin = -pressure_per_kelvin(kLoop, {}, shut_in_pressure(programme), hour).value();
  EXPECT_GT(kelvin, 0) << "cooling raises it";
  EXPECT_LT(lift(still), 0.3 * kelvin);
  EXPECT_NEAR(lift({}) - lift(still), kelvin, 0.4 * kelvin);
  EXPECT_NE(band_words({}, UnitSystem::metric).find("1.0"), std::string::npos);
}

TEST(TestBand, ALongerHoldAndAMeasuredTemperatureSeeMore) {
  const TestBounds loose;
  TestBounds measured;
  measured.temperature_drift = kMeasuredDrift;
  EXPECT_LT(visible(hold_then_shut_in(600e3)), visible(pump_then_shut_in(600e3)));
  EXPECT_LT(visible(long_hold_then_shut_in(600e3)), visible(hold_then_shut_in(600e3)));
  EXPECT_LT(visible(long_hold_then_shut_in(600e3), measured),
            0.5 * visible(long_hold_then_shut_in(600e3), loose));
}

TEST(TestBand, RefusesBoundsOutOfRange) {
  TestBounds bounds;
  bounds.temperature_drift = NAN;
  EXPECT_EQ(prepare_band(hold_then_shut_in(600e3), {}, bounds).error().code, "test_bounds");
  bounds = {};
  bounds.exponent = 0.9;
  EXPECT_EQ(prepare_band(hold_then_shut_in(600e3), {}, bounds).error().code, "test_bounds");
  bounds.exponent = 0.2;
  bounds.gauge = 90e3;
  const BandTest test = prepare_band(hold_then_shut_in(50e3), {}, bounds).value();
  EXPECT_EQ(smallest_visible_leak(test, kLoop, {}, bounds).error().code, "test_sees_nothing");
}

}  // namespace underlawn
