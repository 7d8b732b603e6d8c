// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/straight.h"

#include <gtest/gtest.h>

#include <limits>

namespace underlawn {
namespace {

constexpr CoilPattern kStraight[] = {CoilPattern::single_pipe, CoilPattern::two_pipes,
                                     CoilPattern::four_pipes, CoilPattern::six_pipes};

CoilRequest request(CoilPattern pattern, CoilUnknown unknown, double coil, double trench) {
  CoilRequest r;
  r.pattern = pattern;
  r.unknown = unknown;
  r.coil_length = coil;
  r.trench_length = trench;
  r.level_distance = 0.3;
  r.side_distance = 0.5;
  return r;
}

std::string code(const CoilRequest& r) {
  const auto coil = solve_coil(r);
  return coil ? "solved" : coil.error().code;
}

double walked(const Polyline& path) {
  double sum = 0;
  for (std::size_t i = 1; i < path.size(); ++i) sum += distance(path[i - 1], path[i]);
  return sum;
}

}  // namespace

// Counted on paper: a trench of 40 m, levels 0.3 m and sides 0.5 m apart.
TEST(StraightPipe, LengthIsEveryPipeAndEveryTurn) {
  const double expected[] = {2 * 40 + 0.3, 2 * 40 + 0.5, 4 * 40 + 0.5 + 0.3 + 0.5,
                             6 * 40 + 3 * 0.5 + 2 * 0.3};
  for (int i = 0; i < 4; ++i)
    for (CoilUnknown unknown : {CoilUnknown::pitch, CoilUnknown::coil_length}) {
      const auto coil = solve_coil(request(kStraight[i], unknown, 1, 40));
      ASSERT_TRUE(coil) << coil.error().message();
      EXPECT_NEAR(coil->coil_length, expected[i], 1e-12) << pattern_name(kStraight[i]);
      EXPECT_EQ(coil->trench_length, 40);
      EXPECT_EQ(coil->loops, 0);
      EXPECT_EQ(coil->pattern, kStraight[i]);
    }
}

TEST(StraightPipe, TrenchFollowsFromThePipeAndBack) {
  for (CoilPattern pattern : kStraight)
    for (double pipe : {5.0, 123.4, 400.0}) {
      const auto coil = solve_coil(request(pattern, CoilUnknown::trench_length, pipe, 0));
      ASSERT_TRUE(coil);
      EXPECT_EQ(coil->coil_length, pipe);
      const auto back = solve_coil(request(pattern, CoilUnknown::coil_length, 0, coil->trench_length));
      ASSERT_TRUE(back);
      EXPECT_NEAR(back->coil_length, pipe, 1e-12 * pipe);
    }
}

TEST(StraightPipe, PathBeginsAndEndsAtTheHeadAndIsAsLongAsThePipeWithoutItsRises) {
  for (CoilPattern pattern : kStraight) {
    const Coil coil = solve_coil(request(pattern, CoilUnknown::coil_length, 0, 40)).value();
    const Polyline path = straight_path(coil);
    ASSERT_FALSE(path.empty());
    EXPECT_EQ(path.front().x, 0);
    EXPECT_EQ(path.back().x, 0);
    EXPECT_NEAR(walked(path), coil.coil_length - 0.3 * (pipe_levels(pattern) - 1), 1e-12);
  }
}

TEST(StraightPipe, EveryPlaceOfTheSectionHoldsOnePipe) {
  const Coil six = solve_coil(request(CoilPattern::six_pipes, CoilUnknown::coil_length, 0, 40)).value();
  std::set<std::pair<long, long>> places;
  for (const StraightPipe& p : straight_pipes(six)) {
    EXPECT_EQ(std::abs(p.across), 0.25);
    places.insert({std::lround(p.across * 1000), std::lround(p.up * 1000)});
  }
  EXPECT_EQ(places.size(), 6U);
  EXPECT_EQ(places.rbegin()->second, 600);
}

TEST(StraightPipe, RefusesWhatCannotBeLaid) {
  using enum CoilUnknown;
  const CoilPattern four = CoilPattern::four_pipes;
  EXPECT_EQ(code(request(four, coil_length, 0, 0)), "trench_length_out_of_bounds");
  EXPECT_EQ(code(request(four, coil_length, 0, std::numeric_limits<double>::quiet_NaN())),
            "trench_length_out_of_bounds");
  EXPECT_EQ(code(request(four, coil_length, 0, 1001)), "trench_length_out_of_bounds");
  EXPECT_EQ(code(request(four, trench_length, 1.3, 0)), "coil_length_out_of_bounds");  // the turns alone
  EXPECT_EQ(code(request(four, trench_length, 1.4, 0)), "solved");
  auto r = request(four, coil_length, 0, 40);
  r.level_distance = r.pipe_diameter;
  EXPECT_EQ(code(r), "level_distance_out_of_bounds");
  r.pattern = CoilPattern::two_pipes;  // has one level
  EXPECT_EQ(code(r), "solved");
  r.side_distance = -1;
  EXPECT_EQ(code(r), "side_distance_out_of_bounds");
  r.pattern = CoilPattern::single_pipe;
  r.level_distance = 0.3;
  EXPECT_EQ(code(r), "solved");
}

TEST(UprightCoil, IsTheFlatCoilStoodOnEdge) {
  CoilRequest r;
  r.coil_length = 243.84;
  r.trench_length = 30.48;
  Coil flat = solve_coil(r).value();
  r.pattern = CoilPattern::upright_coil;
  r.return_on_top = true;
  const Coil upright = solve_coil(r).value();
  EXPECT_NE(upright, flat);
  flat.pattern = CoilPattern::upright_coil;
  flat.return_on_top = true;
  EXPECT_EQ(upright, flat);
}

}  // namespace underlawn
