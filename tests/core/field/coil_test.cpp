// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/coil.h"

#include <limits>
#include <numbers>
#include <random>

namespace underlawn {
namespace {

using std::numbers::pi;

CoilRequest request(CoilUnknown unknown, double pitch, double coil, double trench, double diameter = 0.9144) {
  CoilRequest r;
  r.unknown = unknown;
  r.loop_diameter = diameter;
  r.pitch = pitch;
  r.coil_length = coil;
  r.trench_length = trench;
  return r;
}

std::string code(const CoilRequest& r) {
  const auto coil = solve_coil(r);
  return coil ? "solved" : coil.error().code;
}

}  // namespace

TEST(Coil, PitchFollowsFromCoilAndTrenchLength) {
  const auto coil = solve_coil(request(CoilUnknown::pitch, 0, 243.84, 30.48));
  ASSERT_TRUE(coil);
  EXPECT_EQ(coil->coil_length, 243.84);
  EXPECT_EQ(coil->trench_length, 30.48);
  EXPECT_NEAR(coil->loops * coil->pitch + coil->loop_diameter, 30.48, 1e-9);
  EXPECT_NEAR(coil->loop_pipe + coil->return_pipe, 243.84, 1e-9);
  EXPECT_NEAR(coil->loop_pipe, coil->loops * loop_length(0.9144, coil->pitch), 1e-9);
  EXPECT_EQ(coil->return_pipe, 30.48);
}

TEST(Coil, AnyOfTheThreeFollowsFromTheOtherTwo) {
  std::mt19937 random(20'240'611);
  std::uniform_real_distribution<double> diameters(0.3, 2), shares(0.05, 0.9), lengths(1.05, 80);
  for (int i = 0; i < 2000; ++i) {
    const double diameter = diameters(random);
    const double pitch = 0.03 + shares(random) * (pi * diameter - 0.03);
    const double trench = diameter * lengths(random);
    const auto given = solve_coil(request(CoilUnknown::coil_length, pitch, 0, trench, diameter));
    ASSERT_TRUE(given) << given.error().message();
    const auto by_pitch = solve_coil(request(CoilUnknown::pitch, 0, given->coil_length, trench, diameter));
    ASSERT_TRUE(by_pitch) << by_pitch.error().message();
    EXPECT_NEAR(by_pitch->pitch, pitch, 1e-9 * pitch * given->coil_length / given->loop_pipe);
    const auto by_trench =
        solve_coil(request(CoilUnknown::trench_length, pitch, given->coil_length, 0, diameter));
    ASSERT_TRUE(by_trench) << by_trench.error().message();
    EXPECT_NEAR(by_trench->trench_length, trench, 1e-9 * trench);
    EXPECT_NEAR(by_trench->loops, given->loops, 1e-9 * given->loops + 1e-12);
  }
}

TEST(Coil, LongerCoilsInOneTrenchLieCloser) {
  double last = 10;
  for (double length = 80; length < 600; length += 20) {
    const auto coil = solve_coil(request(CoilUnknown::pitch, 0, length, 30.48));
    ASSERT_TRUE(coil) << length;
    EXPECT_LT(coil->pitch, last);
    last = coil->pitch;
  }
}

TEST(Coil, ALoopIsLongerThanItsCircleAndShorterThanTheSum) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> diameters(0.2, 3), pitches(0.02, 2);
  for (int i = 0; i < 500; ++i) {
    const double d = diameters(random), p = pitches(random);
    EXPECT_GT(loop_length(d, p), pi * d);
    EXPECT_GT(loop_length(d, p), p);
    EXPECT_LT(loop_length(d, p), loop_length_by_sum(d, p));
  }
}

TEST(Coil, TheTwoLimitsOfALoopAreTheCircleAndTheStraightPipe) {
  EXPECT_DOUBLE_EQ(loop_length(0.9144, 0), pi * 0.9144);
  EXPECT_DOUBLE_EQ(loop_length(0, 0.4), 0.4);
  EXPECT_EQ(loop_length(0, 0), 0);
  // p = pi D is the cycloid of a wheel of the loop's size: four diameters (Wren 1658).
  EXPECT_NEAR(loop_length(0.9144, pi * 0.9144), 4 * 0.9144, 1e-12);
}

TEST(Coil, ALoopAsLongAsTheTrenchIsRefused) {
  EXPECT_EQ(code(request(CoilUnknown::pitch, 0, 100, 0.9144)), "trench_shorter_than_loop");
  EXPECT_EQ(code(request(CoilUnknown::coil_length, 0.4, 0, 0.5)), "trench_shorter_than_loop");
}

TEST(Coil, APitchBelowThePipesDiameterOrBeyondALoopIsRefused) {
  EXPECT_EQ(code(request(CoilUnknown::coil_length, 0.0266, 0, 30)), "pitch_below_pipe");
  EXPECT_EQ(code(request(CoilUnknown::coil_length, -0.4, 0, 30)), "pitch_below_pipe");
  EXPECT_EQ(code(request(CoilUnknown::trench_length, 2.9, 200, 0)), "pitch_too_wide");
  EXPECT_EQ(code(request(CoilUnknown::trench_length, 2.8, 200, 0)), "solved");
}

TEST(Coil, ACoilTooShortToReachTheEndAndBackIsRefusedWithTheLengthThatWould) {
  const auto coil = solve_coil(request(CoilUnknown::pitch, 0, 60, 30.48));
  ASSERT_FALSE(coil);
  EXPECT_EQ(coil.error().code, "coil_too_short");
  EXPECT_EQ(coil.error().thing, "coil length");
  // Trench and four diameters a pitch of pi D: 30.48 + 29.5656 x 4/pi = 68.12 m.
  EXPECT_THAT(coil.error().bound, testing::HasSubstr("68.12"));
  EXPECT_EQ(code(request(CoilUnknown::trench_length, 0.4, 0.9, 0)), "coil_too_short");
}

TEST(Coil, ACoilTooLongForTheTrenchIsRefused) {
  EXPECT_EQ(code(request(CoilUnknown::pitch, 0, 5000, 30.48)), "coil_too_long");
}

TEST(Coil, AThickerPipeNeedsAWiderPitch) {
  CoilRequest r = request(CoilUnknown::coil_length, 0.05, 0, 30);
  EXPECT_EQ(code(r), "solved");
  r.pipe_diameter = 0.0603;
  EXPECT_EQ(code(r), "pitch_below_pipe");
}

TEST(Coil, NonsenseIsRefusedWhicheverFieldItIsIn) {
  const double nan = std::numeric_limits<double>::quiet_NaN(), inf = std::numeric_limits<double>::infinity();
  using enum CoilUnknown;
  for (double bad : {nan, inf, -inf, 0.0, -1.0, 1e300}) {
    for (CoilUnknown unknown : {pitch, coil_length, trench_length}) {
      EXPECT_FALSE(solve_coil(request(unknown, 0.4, 200, 30, bad))) << bad;
      CoilRequest thick = request(unknown, 0.4, 200, 30);
      thick.pipe_diameter = bad;
      EXPECT_FALSE(solve_coil(thick)) << bad;
      EXPECT_EQ(solve_coil(request(unknown, bad, 200, 30)).has_value(), unknown == pitch) << bad;
      EXPECT_EQ(solve_coil(request(unknown, 0.4, bad, 30)).has_value(), unknown == coil_length) << bad;
      EXPECT_EQ(solve_coil(request(unknown, 0.4, 200, bad)).has_value(), unknown == trench_length) << bad;
    }
  }
}

TEST(Coil, WhatTheUnknownHappensToHoldDoesNotMatter) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(solve_coil(request(CoilUnknown::pitch, nan, 243.84, 30.48)),
            solve_coil(request(CoilUnknown::pitch, 7, 243.84, 30.48)));
}

}  // namespace underlawn
