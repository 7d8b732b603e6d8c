// SPDX-License-Identifier: GPL-3.0-or-later
// Volumes of cuts that run into one another, worked by hand or by counting points, none of it by the
// program's own functions.
#include "dig/cuts.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <random>

namespace underlawn {
namespace {

constexpr double kYard3 = 0.764554857984;
constexpr double kNear = 0.01;  // m3: the clipper's grid over a trench

double sum(const std::vector<double>& volumes) {
  return std::accumulate(volumes.begin(), volumes.end(), 0.0);
}

// Whether a place at this depth is inside a cut of one straight leg.
bool in_cut(const Cut& cut, Point p, double depth) {
  if (depth < cut.top || depth > cut.floor) return false;
  const double dx = cut.line[1].x - cut.line[0].x, dy = cut.line[1].y - cut.line[0].y;
  const double long_ = std::hypot(dx, dy);
  const double along = ((p.x - cut.line[0].x) * dx + (p.y - cut.line[0].y) * dy) / long_;
  const double across = std::abs((p.x - cut.line[0].x) * dy - (p.y - cut.line[0].y) * dx) / long_;
  return along >= 0 && along <= long_ && across <= cut.width / 2 + cut.slope * (cut.floor - depth);
}

// m3 that are counted more than once, by points of a grid.
double counted(const std::vector<Cut>& cuts, double step, double step_down) {
  double volume = 0;
  for (double x = -8 + step / 2; x < 20; x += step)
    for (double y = -8 + step / 2; y < 20; y += step)
      for (double z = step_down / 2; z < 2.5; z += step_down) {
        int in = 0;
        for (const Cut& cut : cuts) in += in_cut(cut, {x, y}, z);
        volume += std::max(0, in - 1) * step * step * step_down;
      }
  return volume;
}

}  // namespace

// 100 ft by 3 ft by 6 ft at 1:1 are 200 yd3 (29 CFR 1926 Subpart P, Table B-1, type B; by the trapezoid), 15
// ft across at the ground. Two of them 12 ft apart share a ridge 3 ft wide and 1.5 ft high: 2.25 ft2 x 100
// ft.
TEST(Cuts, NeighboursLaidBackShareTheRidgeBetweenThem) {
  const double ft = 0.3048;
  std::vector<Cut> cuts;
  for (double y : {0.0, 12 * ft}) cuts.push_back({{{0, y}, {100 * ft, y}}, 3 * ft, 1, 0, 6 * ft});
  const std::vector<double> twice = counted_twice(cuts);
  EXPECT_NEAR(sum(twice), 225.0 / 27 * kYard3, kNear);
  EXPECT_NEAR(twice[0], twice[1], kNear);
  // At 15 ft their tops meet and no more.
  for (Point& p : cuts[1].line) p.y = 15 * ft;
  EXPECT_EQ(sum(counted_twice(cuts)), 0);
}

// Metres: 30 by 1 by 2 at 1.5:1, 3.6 apart. From where the sides meet, 2.6/3 over the floor, to the ground
// the ridge grows from nothing to 7 - 3.6 wide.
TEST(Cuts, TheRidgeIsATriangle) {
  std::vector<Cut> cuts;
  for (double y : {0.0, 3.6}) cuts.push_back({{{0, y}, {30, y}}, 1, 1.5, 0, 2});
  EXPECT_NEAR(sum(counted_twice(cuts)), 30 * (7 - 3.6) * (2 - 2.6 / 3) / 2, kNear);
}

// Prismoid: h/6 (A at the top + 4 A half way + A at the bottom), of a header that ends in the middle of a
// coil trench: half its width by half the coil trench's at 0, 0.75 and 1.5 m.
TEST(Cuts, AHeaderIntoACoilTrenchIsAPrismoid) {
  const std::vector<Cut> cuts = {{{{0, 0}, {30, 0}}, 1, 1.5, 0, 2}, {{{0, 0}, {0, 20}}, 0.6, 1.5, 0, 1.5}};
  const double top = 2.55 * 3.5, middle = 1.425 * 2.375, bottom = 0.3 * 1.25;
  EXPECT_NEAR(sum(counted_twice(cuts)), 1.5 / 6 * (top + 4 * middle + bottom), kNear);
}

TEST(Cuts, UprightOnesShareTheirPlanAsDeepAsTheShallower) {
  const std::vector<Cut> cuts = {{{{0, 0}, {30, 0}}, 1, 0, 0, 2}, {{{5, -4}, {5, 4}}, 0.6, 0, 0, 1.5}};
  EXPECT_NEAR(sum(counted_twice(cuts)), 0.6 * 1 * 1.5, 1e-3);
}

// Three on one place are one.
TEST(Cuts, NothingIsTakenOffTwice) {
  const Cut cut{{{0, 0}, {10, 0}}, 1, 0, 0, 2};
  EXPECT_NEAR(sum(counted_twice({cut, cut, cut})), 2 * 20, kNear);
  EXPECT_EQ(counted_twice({cut}), std::vector<double>{0});
  EXPECT_TRUE(counted_twice({}).empty());
}

TEST(Cuts, SandAtDifferentDepthsIsNotShared) {
  const std::vector<Cut> apart = {{{{0, 0}, {30, 0}}, 1, 0, 1.9, 2}, {{{5, -4}, {5, 4}}, 0.6, 0, 1.4, 1.5}};
  EXPECT_EQ(sum(counted_twice(apart)), 0);
  const std::vector<Cut> half = {{{{0, 0}, {30, 0}}, 1, 0, 1.4, 1.6}, {{{5, -4}, {5, 4}}, 0.6, 0, 1.3, 1.5}};
  EXPECT_NEAR(sum(counted_twice(half)), 0.6 * 1 * 0.1, 1e-3);
}

TEST(Cuts, AgreeWithCountingPointsForRandomOnes) {
  std::mt19937 random(23);
  std::uniform_real_distribution<double> at(0, 12), widths(0.5, 1.5), slopes(0, 1.5), floors(1, 2.2);
  for (int i = 0; i < 4; ++i) {
    std::vector<Cut> cuts;
    for (int n = 0; n < 4; ++n)
      cuts.push_back({{{at(random), at(random)}, {at(random), at(random)}},
                      widths(random),
                      i % 3 == 0 ? 0.0 : slopes(random),
                      0,
                      floors(random)});
    const double points = counted(cuts, 0.05, 0.05);
    EXPECT_NEAR(sum(counted_twice(cuts)), points, 0.02 * points + 0.05) << i;
  }
}

}  // namespace underlawn
