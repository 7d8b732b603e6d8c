// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <random>

#include "field/coil.h"

namespace underlawn {
namespace {

Coil coil_of(double diameter, double pitch, double trench) {
  CoilRequest r;
  r.unknown = CoilUnknown::coil_length;
  r.loop_diameter = diameter;
  r.pitch = pitch;
  r.trench_length = trench;
  return solve_coil(r).value();
}

}  // namespace

TEST(CoilPath, ItsLengthTendsToTheCoilLengthWhateverThePartOfALoop) {
  std::mt19937 random(31);
  std::uniform_real_distribution<double> diameters(0.4, 1.5), pitches(0.1, 1.2), lengths(2, 40);
  for (int i = 0; i < 200; ++i) {
    const Coil coil = coil_of(diameters(random), pitches(random), lengths(random));
    const double coarse = coil.coil_length - length(coil_path(coil, 60));
    const double fine = coil.coil_length - length(coil_path(coil, 600));
    EXPECT_GT(fine, -1e-8) << coil.loops;  // chords are never longer than their arcs
    EXPECT_LT(fine, 2e-5 * coil.coil_length) << coil.loops;
    EXPECT_LT(fine, coarse / 50) << coil.loops;  // error falls with the square of the step
  }
}

TEST(CoilPath, StartsAndEndsAtTheHeadAndStaysInTheTrench) {
  std::mt19937 random(32);
  std::uniform_real_distribution<double> pitches(0.1, 1), lengths(2, 40);
  for (int i = 0; i < 200; ++i) {
    const Coil coil = coil_of(0.9144, pitches(random), lengths(random));
    const Polyline path = coil_path(coil, 90);
    EXPECT_EQ(path.front(), (Point{0, 0}));
    EXPECT_EQ(path.back(), (Point{0, 0}));
    for (Point p : path) {
      EXPECT_GE(p.x, -1e-9);
      EXPECT_LE(p.x, coil.trench_length + 1e-9);
      EXPECT_LE(std::abs(p.y), coil.loop_diameter / 2 + 1e-9);
    }
  }
}

TEST(CoilPath, WithHalfALoopLeftItReachesTheFarEndButForAPipesWidthOrTwo) {
  const Coil coil = coil_of(0.9, 0.4, 0.9 + 20.5 * 0.4);
  const Polyline path = coil_path(coil, 100);
  double farthest = 0;
  for (Point p : path) farthest = std::max(farthest, p.x);
  EXPECT_NEAR(coil.loops, 20.5, 1e-9);
  EXPECT_LE(farthest, coil.trench_length);
  EXPECT_GT(farthest, coil.trench_length - 0.05);
}

TEST(CoilPath, LoopsAdvanceByThePitch) {
  const Coil coil = coil_of(0.9, 0.4, 8.9);  // 20 loops
  const Polyline path = coil_path(coil, 100);
  for (int loop = 0; loop <= 20; ++loop) {
    const Point p = path[static_cast<std::size_t>(loop) * 100];
    EXPECT_NEAR(p.x, loop * 0.4, 1e-9);
    EXPECT_NEAR(p.y, 0, 1e-9);
  }
}

TEST(CoilPath, NothingOrNonsenseGivesNoPath) {
  EXPECT_TRUE(coil_path(Coil{}, 100).empty());
  Coil huge;
  huge.loops = 1e12;
  EXPECT_TRUE(coil_path(huge, 100).empty());
}

}  // namespace underlawn
