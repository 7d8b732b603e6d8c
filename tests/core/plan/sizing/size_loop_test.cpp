// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/sizing/size_loop.h"

#include <gtest/gtest.h>

#include "plan/sizing/smallest_field.h"
#include "plan/solve.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

// Two years keep the tests short; nothing that is checked hangs on their number.
Plan quick(Plan plan = sample::half_acre()) {
  plan.thermal.years = 2;
  return plan;
}

struct Trials {
  Plan plan = quick();
  Surroundings surroundings = make_surroundings(plan.thermal).value();
  KernelShelf shelf;
  Coil coil = coil_of(plan.wishes, plan.units).value();
  FieldTrials trials{plan, coil, surroundings, shelf, {}};
};

Outcome solved_with(Plan plan, int circuits) {
  plan.wishes.circuits = circuits;
  return solve(plan);
}

}  // namespace

TEST(SizeLoop, AFieldOnTheLotIsWhatSolveSays) {
  Trials t;
  for (int n : {2, 4}) {
    const Outcome outcome = solved_with(t.plan, n);
    EXPECT_EQ(t.trials.placed(n).coldest, outcome.temperatures->simulation.coldest) << n;
    EXPECT_EQ(t.trials.placed(n).warmest, outcome.temperatures->simulation.warmest) << n;
    EXPECT_NEAR(t.trials.placed(n).bank, outcome.dig.total.bank, 1e-9) << n;
  }
}

TEST(SizeLoop, MoreCircuitsAreWarmerInWinterAndColderInSummer) {
  Trials t;
  for (int n = 2; n <= 8; ++n) {
    EXPECT_GT(t.trials.idealised(n).coldest, t.trials.idealised(n - 1).coldest) << n;
    EXPECT_LT(t.trials.idealised(n).warmest, t.trials.idealised(n - 1).warmest) << n;
  }
}

TEST(SizeLoop, TheSizeFoundHoldsAndOneCircuitFewerDoesNot) {
  const Plan plan = quick();
  const auto sizing = size_loop(plan);
  ASSERT_TRUE(sizing.has_value()) << sizing.error().message();
  ASSERT_TRUE(sizing->needed && sizing->needed->placed);
  const int n = sizing->needed->circuits;
  ASSERT_GT(n, 1);
  const auto within = [&](int circuits) {
    const Simulation s = solved_with(plan, circuits).temperatures->simulation;
    return s.coldest >= plan.thermal.coldest_allowed && s.warmest <= plan.thermal.warmest_allowed;
  };
  EXPECT_TRUE(within(n));
  EXPECT_FALSE(within(n - 1));
  for (const Alternative& a : sizing->alternatives) {
    ASSERT_TRUE(a.size || a.refusal);
    if (!a.size || !a.size->placed) continue;
    const Simulation s = solve(with_wishes(plan, a.wishes)).temperatures->simulation;
    EXPECT_EQ(s.coldest, a.size->coldest) << a.amount;
    EXPECT_GE(s.coldest, plan.thermal.coldest_allowed) << a.amount;
  }
}

TEST(SizeLoop, TheLeastCoilHoldsAndAMetreLessDoesNot) {
  const Plan plan = quick();
  const auto sizing = size_loop(plan);
  ASSERT_TRUE(sizing && sizing->least_coil);
  const auto coldest = [&](double length) {
    Plan p = plan;
    p.wishes.coil_length = length;
    return solve(p).temperatures->simulation;
  };
  const auto within = [&](const Simulation& s) {
    return s.coldest >= plan.thermal.coldest_allowed && s.warmest <= plan.thermal.warmest_allowed;
  };
  EXPECT_TRUE(within(coldest(*sizing->least_coil)));
  EXPECT_FALSE(within(coldest(*sizing->least_coil - 1)));
}

TEST(SizeLoop, ALotTooSmallIsToldTheNeedAndWhatItGives) {
  const auto none = size_loop(quick(sample::tiny_lot()));
  ASSERT_TRUE(none && none->needed);
  EXPECT_FALSE(none->needed->placed);
  EXPECT_FALSE(none->given.has_value());
  EXPECT_EQ(none->drawn.circuits, 0);
  Plan crowded = quick();
  crowded.thermal.load.heat_loss = 24'000;
  crowded.thermal.unit = scaled(crowded.thermal.unit, 2.5);
  const auto few = size_loop(crowded);
  ASSERT_TRUE(few && few->needed && few->given);
  EXPECT_FALSE(few->needed->placed);
  EXPECT_GT(few->needed->circuits, few->given->circuits);
}

TEST(SizeLoop, ALimitBeyondTheGroundItselfIsRefusedByName) {
  Plan plan = quick();
  plan.thermal.coldest_allowed = 15;
  const auto cold = size_loop(plan);
  ASSERT_FALSE(cold.has_value());
  EXPECT_EQ(cold.error().code, "limit_warmer_than_ground");
  plan = quick();
  plan.thermal.warmest_allowed = 15;
  ASSERT_FALSE(size_loop(plan).has_value());
  EXPECT_EQ(size_loop(plan).error().code, "limit_colder_than_ground");
  plan = quick();
  plan.thermal.soil.source = SoilSource::typed;
  plan.thermal.soil.typed.conductivity = 0;
  EXPECT_EQ(size_loop(plan).error().thing, "Soil conductivity");
}

TEST(SizeLoop, StopsWhenAskedAndTellsItsProgress) {
  std::stop_source source;
  double last = -1;
  const auto stopped = size_loop(
      quick(),
      [&](double share, const std::string&) {
        EXPECT_GE(share, last);
        last = share;
        if (share > 0.2) source.request_stop();
      },
      source.get_token());
  ASSERT_FALSE(stopped.has_value());
  EXPECT_EQ(stopped.error().code, "sizing_stopped");
  EXPECT_LT(last, 0.5);
}

// Common practice, no source: about 800 ft of coiled 3/4 in pipe in a trench, and one trench to a ton of
// capacity, in moist ground.
TEST(SizeLoop, LandsWithinAFactorOfTwoOfATrenchToATon) {
  const auto sizing = size_loop(quick());
  ASSERT_TRUE(sizing && sizing->needed);
  const double tons = performance_at(quick().thermal.unit.heating, 0).capacity / 3516.85;
  EXPECT_GE(sizing->needed->circuits, tons / 2);
  EXPECT_LE(sizing->needed->circuits, tons * 2);
}
