// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/sizing/chance.h"

#include <gtest/gtest.h>

#include <cmath>

#include "plan/sizing/normal_draws.h"
#include "plan/solve.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

Plan quick() {
  Plan plan = sample::half_acre();
  plan.thermal.years = 2;
  return plan;
}

Chance chance_of(const Plan& plan, const ChanceWishes& wishes) {
  return chance_of_holding(plan, solve(plan), wishes).value();
}

}  // namespace

TEST(Chance, IsTheSameEachTimeAndAnotherWithAnotherSeed) {
  const Plan plan = quick();
  const Chance a = chance_of(plan, {30, 7, {}}), b = chance_of(plan, {30, 7, {}}),
               c = chance_of(plan, {30, 8, {}});
  EXPECT_EQ(a.holding, b.holding);
  EXPECT_EQ(a.coldest.low, b.coldest.low);
  EXPECT_EQ(a.warmest.high, b.warmest.high);
  EXPECT_NE(a.coldest.low, c.coldest.low);
}

TEST(Chance, IsOneOrNoughtWhereTheCaseIsClear) {
  Plan plan = quick();
  plan.thermal.coldest_allowed = -20;
  plan.thermal.warmest_allowed = 60;
  EXPECT_EQ(chance_of(plan, {40, 1, {}}).share, 1);
  plan.thermal.coldest_allowed = 20;
  const Chance never = chance_of(plan, {40, 1, {}});
  EXPECT_EQ(never.share, 0);
  EXPECT_EQ(never.too_cold, 40);
  EXPECT_EQ(never.low, 0);
  EXPECT_GT(never.high, 0);
}

TEST(Chance, WithoutSpreadEveryDrawIsTheLoopItself) {
  const Plan plan = quick();
  const Outcome outcome = solve(plan);
  const Chance c = chance_of_holding(plan, outcome, {3, 1, {0, 0, 0, 0}}).value();
  EXPECT_EQ(c.coldest.low, outcome.temperatures->simulation.coldest);
  EXPECT_EQ(c.coldest.high, outcome.temperatures->simulation.coldest);
  EXPECT_EQ(c.warmest.middle, outcome.temperatures->simulation.warmest);
}

TEST(Chance, MoreSpreadInTheSoilIsMoreSpreadInTheWater) {
  const Plan plan = quick();
  const Chance narrow = chance_of(plan, {60, 3, {0.05, 0, 0, 0}}),
               wide = chance_of(plan, {60, 3, {0.3, 0, 0, 0}});
  EXPECT_GT(wide.coldest.high - wide.coldest.low, 3 * (narrow.coldest.high - narrow.coldest.low));
}

TEST(Chance, RefusesWhatItCannotDraw) {
  const Plan plan = quick();
  EXPECT_EQ(chance_of_holding(plan, Outcome{}, {}).error().code, "chance_no_temperatures");
  const Outcome outcome = solve(plan);
  EXPECT_EQ(chance_of_holding(plan, outcome, {0, 1, {}}).error().code, "chance_draws");
  EXPECT_EQ(chance_of_holding(plan, outcome, {5, 1, {NAN, 0, 0, 0}}).error().code, "chance_spread");
  std::stop_source source;
  source.request_stop();
  EXPECT_EQ(chance_of_holding(plan, outcome, {5, 1, {}}, {}, source.get_token()).error().code,
            "chance_stopped");
}

// Brown, Cai & DasGupta, Interval estimation for a binomial proportion, Stat. Sci. 16:101, 2001 (from
// memory): Wilson's interval is where |p^ - p| = z sqrt(p (1 - p)/n).
TEST(Chance, WilsonsEndsAreWhereTheScoreTestTurns) {
  for (const auto& [k, n] : {std::pair{81, 263}, std::pair{9, 10}, std::pair{150, 300}}) {
    const ShareInterval i = wilson(k, n);
    const double share = static_cast<double>(k) / n;
    for (double p : {i.low, i.high})
      EXPECT_NEAR(std::abs(share - p), 1.959964 * std::sqrt(p * (1 - p) / n), 1e-6) << k << " of " << n;
  }
  EXPECT_EQ(wilson(0, 50).low, 0);
  EXPECT_EQ(wilson(50, 50).high, 1);
}

TEST(Chance, NormalDrawsHaveMeanNoughtAndUnitSpread) {
  NormalDraws normal(1);
  constexpr int kDraws = 100'000;
  double sum = 0, squares = 0;
  int beyond = 0;
  for (int i = 0; i < kDraws; ++i) {
    const double z = normal();
    sum += z;
    squares += z * z;
    beyond += std::abs(z) > 1.959964;
  }
  EXPECT_NEAR(sum / kDraws, 0, 0.015);  // five times the standard error
  EXPECT_NEAR(squares / kDraws, 1, 0.025);
  EXPECT_NEAR(static_cast<double>(beyond) / kDraws, 0.05, 0.0035);
}
