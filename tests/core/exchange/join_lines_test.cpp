// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/join_lines.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "exchange/chords.h"
#include "plane/region.h"

namespace underlawn {

namespace {

std::vector<double> areas(const JoinedLines& joined) {
  std::vector<double> all;
  for (const Ring& ring : joined.rings) all.push_back(area(ring));
  std::ranges::sort(all);
  return all;
}

}  // namespace

// Three lots in a row that share their sides, each side drawn once, in any order and direction.
TEST(JoinLines, FindsEveryLotOfAShuffledSubdivision) {
  std::mt19937 random(7);
  for (int round = 0; round < 50; ++round) {
    std::vector<Polyline> lines;
    for (int i = 0; i < 3; ++i) {
      const double x = 20 * i;
      lines.push_back({{x, 0}, {x + 20, 0}});
      lines.push_back({{x, 40}, {x + 20, 40}});
      lines.push_back({{x, 0}, {x, 40}});
    }
    lines.push_back({{60, 0}, {60, 40}});
    lines.push_back({{70, 0}, {90, 5}});   // closes nothing
    lines.push_back({{20, 40}, {20, 0}});  // drawn twice
    std::ranges::shuffle(lines, random);
    for (Polyline& line : lines) {
      if (random() % 2 == 0) std::ranges::reverse(line);
      for (Point& p : line) p = p + Point{1e-3 * (random() % 3), 0};
    }
    const JoinedLines joined = join_lines(lines, 0.02);
    const auto found = areas(joined);
    ASSERT_EQ(found.size(), 3u) << round;
    for (double a : found) EXPECT_NEAR(a, 800, 0.5);
    EXPECT_EQ(joined.chains.size(), 1u);
  }
}

TEST(JoinLines, SaysHowFarALotIsFromClosing) {
  const JoinedLines joined =
      join_lines({{{0, 0}, {30, 0}}, {{30, 0}, {30, 30}}, {{30, 30}, {0, 0.34}}}, 0.02);
  EXPECT_TRUE(joined.rings.empty());
  ASSERT_EQ(joined.chains.size(), 1u);
  EXPECT_EQ(joined.chains[0].size(), 4u);
  EXPECT_NEAR(joined.narrowest_gap, 0.34, 1e-9);
}

TEST(JoinLines, AHoleInTheMiddleIsAnAreaOfItsOwn) {
  const auto square = [](double at, double size) {
    return Polyline{{at, at}, {at + size, at}, {at + size, at + size}, {at, at + size}, {at, at}};
  };
  EXPECT_EQ(areas(join_lines({square(0, 30), square(10, 5)}, 0.02)), (std::vector<double>{25, 900}));
}

// The sagitta of each chord, from its definition.
TEST(Chords, StayWithinTheirToleranceAndAreNoMoreThanNeeded) {
  for (double radius : {0.3, 5.0, 80.0, 2000.0})
    for (double tolerance : {0.001, 0.01, 0.1}) {
      const double sagitta = radius * (1 - std::cos(chord_angle(radius, tolerance) / 2));
      EXPECT_LE(sagitta, tolerance * (1 + 1e-9)) << radius << " " << tolerance;
    }
  const Polyline half = bulge_points({0, 0}, {10, 0}, 1, 0.01);  // a half circle, to the right going east
  for (Point p : half) EXPECT_NEAR(distance(p, {5, 0}), 5, 1e-9);
  EXPECT_NEAR(std::ranges::min_element(half, {}, &Point::y)->y, -5, 0.01);
  EXPECT_EQ(bulge_points({0, 0}, {10, 0}, 0, 0.01), (Polyline{{10, 0}}));
}

TEST(Chords, ThinningKeepsCornersAndStraightRuns) {
  const Polyline drawn = {{0, 0}, {10, 0}, {20, 0}, {20, 10}, {0, 10}};
  EXPECT_EQ(with_fewer_chords(drawn, 0.01), drawn);
  Polyline fine = {{-10, -30}};
  for (int i = 0; i <= 180; ++i)
    fine.push_back(10.0 * direction(3.141592653589793 - i * 3.141592653589793 / 180));
  fine.push_back({10, -30});
  const Polyline thin = with_fewer_chords(fine, 0.01);
  EXPECT_LT(thin.size(), 45u);
  EXPECT_EQ(thin.front(), fine.front());
  EXPECT_EQ(thin.back(), fine.back());
  for (std::size_t i = 1; i + 2 < thin.size(); ++i)
    EXPECT_LE(10 - norm(0.5 * (thin[i] + thin[i + 1])), 0.0101);
}

}  // namespace underlawn
