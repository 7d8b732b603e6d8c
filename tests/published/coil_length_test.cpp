// SPDX-License-Identifier: GPL-3.0-or-later
// The flat coil against numerical integration of its curve, against figures computed apart, and against the
// trade.
#include <numbers>

#include "dig/dig.h"
#include "field/coil.h"

namespace underlawn {
namespace {

constexpr double kFoot = 0.3048;
using std::numbers::pi;

// Arc length of x = p th/2pi + (D/2) cos th, y = (D/2) sin th over one turn, by composite Simpson on the
// derivative: nothing of the closed form.
double by_simpson(double diameter, double pitch) {
  const int steps = 20'000;
  const double h = 2 * pi / steps;
  const auto speed = [&](int i) {
    const double th = i * h;
    return std::hypot(pitch / (2 * pi) - diameter / 2 * std::sin(th), diameter / 2 * std::cos(th));
  };
  double sum = speed(0) + speed(steps);
  for (int i = 1; i < steps; ++i) sum += (i % 2 == 1 ? 4 : 2) * speed(i);
  return sum * h / 3;
}

struct Loop {
  double diameter, pitch, exact, by_sum;  // ft
};

// Trochoid arc lengths computed apart to four decimals, and the handbook sum pi D + p.
constexpr Loop kLoops[] = {{3.0, 1.50, 9.4846, 10.9248},
                           {3.0, 3.00, 9.6651, 12.4248},
                           {3.0, 0.75, 9.4397, 10.1748},
                           {2.5, 2.00, 7.9818, 9.8540}};

Coil coil_of_800_feet() {
  CoilRequest r;
  r.unknown = CoilUnknown::pitch;
  r.loop_diameter = 3 * kFoot;
  r.coil_length = 800 * kFoot;
  r.trench_length = 100 * kFoot;
  return solve_coil(r).value();
}

}  // namespace

TEST(PublishedCoil, TheClosedFormIsTheIntegralOfTheRealCurve) {
  for (double diameter : {0.3, 0.6, 0.9144, 1.5})
    for (double pitch : {0.03, 0.1, 0.4064, 0.9, 0.95})
      EXPECT_NEAR(loop_length(diameter, pitch), by_simpson(diameter, pitch), 1e-7)
          << diameter << " " << pitch;
}

TEST(PublishedCoil, TheTableOfLoopLengthsIsMet) {
  for (const Loop& l : kLoops) {
    EXPECT_NEAR(loop_length(l.diameter * kFoot, l.pitch * kFoot) / kFoot, l.exact, 5e-5);
    EXPECT_NEAR(loop_length_by_sum(l.diameter * kFoot, l.pitch * kFoot) / kFoot, l.by_sum, 5.1e-5);
  }
}

TEST(PublishedCoil, ForSmallPitchTheSeriesHolds) {
  // pi D [1 + (p/(pi D))^2/4], first terms of the series of the ellipse-like integral.
  const double d = 0.9144, p = 0.2;
  const double series = pi * d * (1 + std::pow(p / (pi * d), 2) / 4);
  EXPECT_NEAR(loop_length(d, p), series, 1e-5 * series);
}

// Common practice, no source: an 800 ft coil of 3 ft loops, return pipe included, fills a trench of 100 ft at
// a pitch between 14 and 19 in.
TEST(PublishedCoil, EightHundredFeetInAHundredFootTrenchLieAtThePitchOfTheTrade) {
  const double inches = coil_of_800_feet().pitch / kFoot * 12;
  EXPECT_GT(inches, 14);
  EXPECT_LT(inches, 19);
}

// Common practice, no source: about 5.3 ft of 3/4 in pipe to a foot of trench with 3 ft coils is a wide
// pitch; the pitch that gives it must still be a loop's.
TEST(PublishedCoil, FivePointThreeFeetToTheFootIsAWiderPitch) {
  CoilRequest r;
  r.unknown = CoilUnknown::pitch;
  r.loop_diameter = 3 * kFoot;
  r.coil_length = 530 * kFoot;
  r.trench_length = 100 * kFoot;
  const auto coil = solve_coil(r);
  ASSERT_TRUE(coil);
  EXPECT_GT(coil->pitch, coil_of_800_feet().pitch);
  EXPECT_LT(coil->pitch, 3 * kFoot);
}

}  // namespace underlawn
