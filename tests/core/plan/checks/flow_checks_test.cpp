// SPDX-License-Identifier: GPL-3.0-or-later
// What the rules about flow say of a loop solved and then changed by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "plan/coldest_fluid.h"
#include "plan/record/record_judge.h"
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
  o.flow = protected_flow(o.flow, plan.flow, o.temperatures.get());
  const auto f = checks::freeze_protection(plan, o);
  ASSERT_EQ(f.size(), 1u);
  EXPECT_NEAR(f[0].required, -9 - plan.flow.freeze_margin, 1e-12);
  EXPECT_THAT(f[0].advice, HasSubstr("Use at least"));
}

TEST(FreezeProtection, FlowRecordAndCheckTellOneLimit) {
  Plan plan = crafted::plan();
  plan.flow.coldest_temperature = 3;  // typed far warmer than the years come to
  const Outcome o = solve(plan);
  double coldest = 3;
  for (const auto* year : {&o.temperatures->simulation.first, &o.temperatures->simulation.tenth,
                           &o.temperatures->simulation.last})
    for (const HourState& h : *year) coldest = std::min(coldest, h.leaving);
  ASSERT_LT(coldest, 3);
  const double limit = std::min(0.0, coldest - plan.flow.freeze_margin);
  EXPECT_NEAR(o.flow->antifreeze.wanted_freezing, limit, 1e-12);
  const FillJudgement fill = judge_record(plan, o.flow.get(), o.temperatures.get()).fill;
  EXPECT_NEAR(fill.wanted_freezing, limit, 1e-12);
  // Polyethylene shrinks more than the water in it: the colder, the higher the pressure.
  ASSERT_TRUE(fill.asked_charge);
  const FillJudgement typed = judge_fill(plan, *o.flow, plan.flow.coldest_temperature);
  const FillJudgement cold = judge_fill(plan, *o.flow, coldest);
  EXPECT_GT(fill.asked_charge->winter, typed.asked_charge->winter);
  EXPECT_EQ(fill.asked_charge->winter, cold.asked_charge->winter);
  EXPECT_NEAR(o.figures.find("flow.wanted_freezing")->value, limit, 1e-12);
  for (const Finding& f : checks::freeze_protection(plan, o)) EXPECT_NEAR(f.required, limit, 1e-12);
  // Freezing points by concentration are Melinder's: 20 % freezes at about -7.1 °C (ASHRAE Handbook).
  plan.flow.mass_fraction = *o.flow->antifreeze.recommended + 0.001;
  EXPECT_LE(freezing_point(plan.flow.fluid, plan.flow.mass_fraction).value(), limit);
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
