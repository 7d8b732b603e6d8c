// SPDX-License-Identifier: GPL-3.0-or-later
// Straight patterns against published steady resistances of pipes in the ground.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "field/straight.h"
#include "pipe/pipe_size.h"
#include "thermal/loop_geometry.h"

namespace underlawn {
namespace {

using std::numbers::pi;

constexpr double kTrench = 950;  // m, so long that the ends do not count

struct Field {
  Layout layout;
  Wishes wishes;
};

// Trenches side by side with their lowest pipe's axis at depth z.
Field field(CoilPattern pattern, const std::string& pipe, int trenches, double spacing, double z, double side,
            double level) {
  Field f;
  CoilRequest r;
  r.pattern = pattern;
  r.trench_length = kTrench;
  r.side_distance = side;
  r.level_distance = level;
  f.wishes.pipe = pipe;
  const double radius = find_pipe(pipe).value().outside_diameter / 2;
  for (int i = 0; i < trenches; ++i) {
    Trench t;
    t.head = {0, i * spacing};
    t.end = {kTrench, i * spacing};
    t.depth = z + radius;
    t.coil = solve_coil(r).value();
    f.layout.trenches.push_back(t);
  }
  return f;
}

StepResponse response(const Field& f) {
  return make_step_response(pipes_in_ground(f.layout, f.wishes), {}, 0);
}

}  // namespace

// A pair of buried pipes that give the same heat: R = R_s + R_m, R_s = ln(4 Z/D)/(2 pi k), R_m = ln(1 + (2
// Z/C)^2)/(4 pi k): EN 13941 annex, Claesson & Dunand 1983 (from memory).
TEST(PublishedStraightPipe, TwoPipesSettleAtTheBuriedPair) {
  const std::string pipe = "3/4 in DR 11";
  const double d = find_pipe(pipe).value().outside_diameter, k = 1.5;
  for (const double z : {1.2, 1.8})
    for (const double c : {0.3, 0.6}) {
      const double expected =
          std::log(4 * z / d) / (2 * pi * k) + std::log(1 + 4 * z * z / (c * c)) / (4 * pi * k);
      EXPECT_NEAR(response(field(CoilPattern::two_pipes, pipe, 1, 0, z, c, 0)).steady(k) / expected, 1, 4e-3);
    }
}

// A row of equal pipes: per pipe S = 2 pi L/ln[(2 w/(pi D)) sinh(2 pi z/w)], Incropera & DeWitt, table of
// shape factors (from memory); for D 0.042164, z 1.5, w 1.0 it is 0.548930 a metre. A row has ends; the
// difference of two rows has none, and what pipes more than some 300 places away would add is 2 (2 z/w)^2/300
// of 23: 0.3 %.
TEST(PublishedStraightPipe, TrenchesOfTwoPipesSideBySideSettleAtTheRow) {
  const std::string pipe = "1-1/4 in DR 11";
  ASSERT_NEAR(find_pipe(pipe).value().outside_diameter, 0.042164, 1e-5);
  const auto all = [&](int trenches) {
    return 2 * trenches *
           response(field(CoilPattern::two_pipes, pipe, trenches, 2.0, 1.5, 1.0, 0)).steady(1.0);
  };
  const double shape_factor = 0.548930;
  const double one = (all(200) - all(140)) / (2 * 60);
  EXPECT_NEAR(one * shape_factor, 1, 0.01);
}

// Line sources less their images, Carslaw & Jaeger 10.10, summed over the pattern's section as drawn by hand.
TEST(PublishedStraightPipe, EveryPatternSettlesAtItsSumOfImages) {
  const std::string pipe = "3/4 in DR 11";
  const double r = find_pipe(pipe).value().outside_diameter / 2, z = 1.8, k = 1.5;
  struct Place {
    double y, up;
  };
  const std::pair<CoilPattern, std::vector<Place>> sections[] = {
      {CoilPattern::single_pipe, {{0, 0}, {0, 0.3}}},
      {CoilPattern::two_pipes, {{-0.2, 0}, {0.2, 0}}},
      {CoilPattern::four_pipes, {{-0.2, 0}, {0.2, 0}, {-0.2, 0.3}, {0.2, 0.3}}},
      {CoilPattern::six_pipes, {{-0.2, 0}, {0.2, 0}, {-0.2, 0.3}, {0.2, 0.3}, {-0.2, 0.6}, {0.2, 0.6}}}};
  for (const auto& [pattern, places] : sections) {
    double sum = 0;
    for (const Place& a : places)
      for (const Place& b : places) {
        const double near = std::hypot(a.y - b.y, a.up - b.up),
                     far = std::hypot(a.y - b.y, 2 * z - a.up - b.up);
        sum += std::log(far / std::max(near, r)) / (2 * pi * k);
      }
    const double expected = sum / static_cast<double>(places.size());
    EXPECT_NEAR(response(field(pattern, pipe, 1, 0, z, 0.4, 0.3)).steady(k) / expected, 1, 6e-3)
        << pattern_name(pattern);
  }
}

}  // namespace underlawn
