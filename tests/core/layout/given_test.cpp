// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/given.h"

#include <gtest/gtest.h>

#include "plan/solve.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

Plan plan_with(std::vector<GivenTrench> given) {
  Plan plan = crafted::plan();
  plan.wishes.given = std::move(given);
  return plan;
}

}  // namespace

TEST(Given, TrenchesOfDifferentLengthAndDirectionAreTakenAsTheyAre) {
  const Outcome o =
      solve(plan_with({{{30, 40}, {60, 40}}, {{30, 50}, {45, 65}, 1.8}, {{70, 40}, {70, 80}, 0, 300}}));
  EXPECT_TRUE(o.layout.troubles.empty());
  ASSERT_EQ(o.layout.trenches.size(), 3u);
  EXPECT_EQ(o.layout.trenches[1].end, (Point{45, 65}));
  EXPECT_EQ(o.layout.trenches[1].depth, 1.8);
  EXPECT_EQ(o.layout.trenches[0].depth, 1.4);
  EXPECT_NEAR(o.layout.trenches[1].coil.pitch, o.coil.pitch, 1e-12);
  EXPECT_NEAR(o.layout.trenches[1].coil.trench_length, std::hypot(15, 15), 1e-9);
  EXPECT_NEAR(o.layout.trenches[2].coil.coil_length, 300, 1e-9);
  EXPECT_FALSE(o.layout.run.line.empty());
  ASSERT_NE(o.temperatures, nullptr);
}

TEST(Given, NeedsNoLotForTheTemperatures) {
  Plan plan = plan_with({{{0, 0}, {40, 0}}});
  plan.site = {};
  plan.wishes.coil_length = 244;
  const Outcome o = solve(plan);
  ASSERT_EQ(o.layout.trenches.size(), 1u);
  ASSERT_NE(o.temperatures, nullptr);
  EXPECT_NEAR(o.temperatures->pipe, o.layout.trenches[0].coil.coil_length, 1e-9);
}

TEST(Given, SaysByNumberWhatCannotBeLaid) {
  const Outcome o = solve(plan_with({{{30, 40}, {60, 40}}, {{30, 50}, {30.2, 50}}}));
  EXPECT_TRUE(o.layout.trenches.empty());
  ASSERT_FALSE(o.layout.troubles.empty());
  EXPECT_EQ(o.layout.troubles[0].thing.rfind("given trench 2, ", 0), 0u) << o.layout.troubles[0].thing;
  EXPECT_EQ(solve(plan_with({{{30, 40}, {60, std::nan("")}}})).layout.troubles.at(0).code, "given_trench");
}

TEST(Given, ACoilIsAsLongAsItsTrenchAlongTheBends) {
  const Outcome o = solve(plan_with({{{30, 40}, {60, 70}, 0, 0, {{60, 40}}}}));
  EXPECT_TRUE(o.layout.troubles.empty());
  ASSERT_EQ(o.layout.trenches.size(), 1u);
  const Trench& t = o.layout.trenches[0];
  EXPECT_NEAR(t.coil.trench_length, 60, 1e-9) << "not the 42.4 m from head to end";
  EXPECT_NEAR(length_of(t), 60, 1e-9);
  EXPECT_NEAR(o.figures.find("trench.1.length")->value, 60, 1e-9);
  EXPECT_NEAR(o.figures.find("trench.1.bend_1_x")->value, 60, 1e-9);
  ASSERT_NE(o.temperatures, nullptr);
  EXPECT_NEAR(o.temperatures->pipe, t.coil.coil_length + 2 * (o.layout.run.length + o.layout.header.length),
              1e-6);
}

// One and the same trench, drawn with a point more than it needs.
TEST(Given, ABendOfNoAngleChangesNothing) {
  const Outcome bent = solve(plan_with({{{30, 40}, {60, 40}, 0, 0, {{41, 40}}}}));
  const Outcome straight = solve(plan_with({{{30, 40}, {60, 40}}}));
  const Trench& t = bent.layout.trenches.at(0);
  EXPECT_EQ(t.coil, straight.layout.trenches.at(0).coil);
  EXPECT_EQ(bent.layout.run.line, straight.layout.run.line);
  EXPECT_NEAR(bent.dig.total.bank, straight.dig.total.bank, 1e-9);
  EXPECT_NEAR(bent.temperatures->response_ten_years / straight.temperatures->response_ten_years, 1, 1e-3);
  EXPECT_NEAR(bent.temperatures->response_hour / straight.temperatures->response_hour, 1, 1e-3);
}

TEST(Given, RunAndHeaderKeepOffATrenchAlongItsBends) {
  // The straight way from the house to the head of the second leads through the first's second leg.
  const Outcome o = solve(plan_with({{{20, 30}, {70, 60}, 0, 0, {{70, 30}}}, {{30, 50}, {60, 50}}}));
  ASSERT_FALSE(o.layout.run.line.empty());
  for (const Finding& f : o.findings) EXPECT_NE(f.rule, "run_through_trench") << f.key;
}

TEST(Given, RefusesBendsThatAreNoPlacesRepeatOrTurnBack) {
  const auto code = [](std::vector<Point> bends) {
    const Outcome o = solve(plan_with({{{30, 40}, {60, 40}, 0, 0, std::move(bends)}}));
    return o.layout.troubles.empty() ? std::string() : o.layout.troubles[0].code;
  };
  EXPECT_EQ(code({{45, std::nan("")}}), "given_trench");
  EXPECT_EQ(code({{45, 50}, {45, 50}}), "given_trench_bend_repeats");
  EXPECT_EQ(code({{30, 40}}), "given_trench_bend_repeats") << "on the head";
  EXPECT_EQ(code({{75, 40.1}}), "given_trench_turns_back");
  EXPECT_EQ(code({{45, 45}}), "");
}

}  // namespace underlawn
