// SPDX-License-Identifier: GPL-3.0-or-later
// How far the curve of a sound loop may lie from the expected one, and so how small a leak the test can show.
#pragma once

#include "base/quantity.h"
#include "flow/pressure_test.h"

namespace underlawn {

// What is not known about a sound loop; every combination of the ends is tried.
struct TestBounds {
  double modulus = 0.2;           // relative, either way
  double exponent = 0.2;          // relative, either way
  double temperature_drift = 1;   // K, either way, from the start of the last shut-in to its end
  double most_air = 0.005;        // m3 per m3 of loop at atmospheric pressure; none is the other end
  double gauge = 0.5 * 6894.757;  // Pa, either way: half a psi, the crew's gauge (common practice, no source)
};
// Once temperature is measured at the pipe: what is left, K (common practice, no source).
inline constexpr double kMeasuredDrift = 0.2;

// A programme prepared with the exponents the bounds call for.
struct BandTest {
  PreparedTest nominal, slow, fast;
  const PreparedTest& of(int side) const { return side == 0 ? nominal : side < 0 ? slow : fast; }
};
// Refuses bounds out of range (modulus and exponent 0..0.5, drift 0..10 K, air 0..0.2, gauge 0..100 kPa).
Result<BandTest> prepare_band(const TestProgramme& programme, const LoopState& state,
                              const TestBounds& bounds);

// One combination of ends: which side of each is taken, and the state it gives.
struct Corner {
  int exponent = 0;
  LoopState state;
};
std::vector<Corner> band_corners(const TestProgramme& programme, const LoopState& state,
                                 const TestBounds& bounds);

// What the band allows for and so why it may rise, and what the leak drawn in it is; for screen and sheet.
std::string band_words(const TestBounds& bounds, UnitSystem units);

struct TestBand {
  TestCurve expected;             // the nominal state
  std::vector<double> low, high;  // Pa at expected.time, the gauge's error within from the last shut-in on
  double low_at(double t) const;
  double high_at(double t) const;
};
// `state` is the sound loop (its leak is not looked at). Refusals of test_curve.
Result<TestBand> test_band(const BandTest& test, const LoopVolume& loop, const LoopState& state,
                           const TestBounds& bounds);

// The curve of the nominal loop with a leak of `leak` m3/s at the pressure it is shut in at.
Result<TestCurve> leak_curve(const BandTest& test, const LoopVolume& loop, const LoopState& state,
                             double leak);

// m3/s at the pressure shut in at: the least leak whose curve comes out of the band before the test ends.
// What is smaller cannot be told from creep by this test.
Result<double> smallest_visible_leak(const BandTest& test, const LoopVolume& loop, const LoopState& state,
                                     const TestBounds& bounds);
// The same where the band of this test and loop is there already.
Result<double> smallest_visible_leak(const BandTest& test, const TestBand& band, const LoopVolume& loop,
                                     const LoopState& state);

}  // namespace underlawn
