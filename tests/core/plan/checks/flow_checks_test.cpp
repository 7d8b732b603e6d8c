// SPDX-License-Identifier: GPL-3.0-or-later
// What the rules about flow say of a loop solved and then changed by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "plan/solve.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using testing::HasSubstr;

const Outcome& solved() {
  static const Outcome outcome = solve(crafted::plan());
  return outcome;
}

Outcome changed(const std::function<void(Flow&)>& change) {
  Outcome o = solved();
  Flow flow = *o.flow;
  change(flow);
  o.flow = std::make_shared<const Flow>(std::move(flow));
  return o;
}

}  // namespace

TEST(FlowChecks, SayNothingWhereNothingFlows) {
  const Plan plan = crafted::plan();
  Outcome bare = solved();
  bare.flow = nullptr;
  bare.purge = nullptr;
  for (Check check : {checks::circuits_unbalanced, checks::circulator_weak, checks::freeze_protection,
                      checks::laminar_in_winter, checks::purge_not_reached})
    EXPECT_TRUE(check(plan, bare).empty());
}

TEST(CircuitsUnbalanced, NamesWhatWouldMendIt) {
  const Plan plan = crafted::plan();
  ASSERT_NE(solved().flow, nullptr);
  EXPECT_TRUE(checks::circuits_unbalanced(plan, changed([](Flow& f) { f.design.imbalance = 0.1; })).empty());
  const auto f = checks::circuits_unbalanced(plan, changed([](Flow& x) {
                                               x.design.imbalance = 0.2;
                                               x.remedies = {{"reverse return", 0.03}};
                                             }));
  ASSERT_EQ(f.size(), 1u);
  EXPECT_EQ(f[0].measured, 0.2);
  EXPECT_THAT(f[0].advice, HasSubstr("reverse return"));
}

TEST(CirculatorWeak, ComparesWhatItGivesWithWhatIsWanted) {
  Plan plan = crafted::plan();
  const auto at = [&](double share) {
    return checks::circulator_weak(
        plan, changed([&](Flow& f) { f.coldest_pump->duty.flow = share * plan.flow.design_flow; }));
  };
  ASSERT_TRUE(solved().flow->coldest_pump.has_value());
  EXPECT_TRUE(at(1.0).empty());
  EXPECT_EQ(at(0.95).at(0).severity, Severity::warning);
  EXPECT_EQ(at(0.5).at(0).severity, Severity::error);
  plan.flow.circulator.curve.clear();
  EXPECT_TRUE(at(0.5).empty());
}

TEST(FreezeProtection, LooksAtTheColdestFluidOfTheYearsToo) {
  Plan plan = crafted::plan();
  EXPECT_TRUE(checks::freeze_protection(plan, solved()).empty());
  Outcome o = solved();
  Temperatures t = *o.temperatures;
  t.simulation.last[100].leaving = -9;
  o.temperatures = std::make_shared<const Temperatures>(std::move(t));
  const auto f = checks::freeze_protection(plan, o);
  ASSERT_EQ(f.size(), 1u);
  EXPECT_NEAR(f[0].required, -9 - plan.flow.freeze_margin, 1e-12);
  EXPECT_THAT(f[0].advice, HasSubstr("Use at least"));
}

TEST(LaminarInWinter, LooksAtTheSlowestCircuit) {
  const Plan plan = crafted::plan();
  const auto slow = [&](double reynolds) {
    return checks::laminar_in_winter(
        plan, changed([&](Flow& f) {
          for (PipeFlow& p : f.coldest.flow.pipes) p.reynolds = 5000;
          f.coldest.flow.pipes[static_cast<std::size_t>(f.loop.circuits[1])].reynolds = reynolds;
        }));
  };
  EXPECT_TRUE(slow(2301).empty());
  EXPECT_EQ(slow(1200).at(0).measured, 1200);
}

TEST(PurgeNotReached, ComparesTheCartWithWhatIsNeeded) {
  const Plan plan = crafted::plan();
  ASSERT_NE(solved().purge, nullptr);
  Purge p = *solved().purge;
  p.one_by_one.reset();
  Outcome o = solved();
  p.together.cart_can = true;
  o.purge = std::make_shared<const Purge>(p);
  EXPECT_TRUE(checks::purge_not_reached(plan, o).empty());
  p.together.cart_can = false;
  o.purge = std::make_shared<const Purge>(p);
  const auto f = checks::purge_not_reached(plan, o);
  ASSERT_EQ(f.size(), 1u);
  EXPECT_EQ(f[0].required, p.together.flow);
}

}  // namespace underlawn
