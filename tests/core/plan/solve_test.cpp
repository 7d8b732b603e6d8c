// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/solve.h"

#include <gtest/gtest.h>

#include "plan/edits.h"
#include "support/crafted.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

constexpr StageRuns kOnce = {1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1};

// What is run again when a plan is solved, changed and solved again.
template <class Change>
StageRuns run_again(Change change) {
  Solver solver;
  Plan plan = crafted::plan();
  solver.solve(plan);
  EXPECT_EQ(solver.runs(), kOnce);
  change(plan);
  solver.solve(plan);
  const StageRuns& r = solver.runs();
  return {r.troubles - 1, r.coil - 1,         r.layout - 1,       r.dig - 1,     r.stake_out - 1,
          r.flow - 1,     r.surroundings - 1, r.temperatures - 1, r.checks - 1,  r.figures - 1,
          r.work - 1,     r.terrain - 1,      r.order - 1,        r.calendar - 1};
}

// Flow, surroundings and temperatures not; work, order of digging and calendar with layout or dig.
StageRuns runs(int troubles, int coil, int layout, int dig, int stake_out, int checks, int figures) {
  const int after = std::max(layout, dig);
  return {troubles, coil, layout, dig, stake_out, 0, 0, 0, checks, figures, after, 0, after, after};
}

void expect_same(const Outcome& a, const Outcome& b) {
  EXPECT_EQ(a.coil, b.coil);
  EXPECT_EQ(a.layout, b.layout);
  EXPECT_EQ(a.dig, b.dig);
  EXPECT_EQ(a.work, b.work);
  EXPECT_EQ(a.stake_out, b.stake_out);
  ASSERT_EQ(a.temperatures == nullptr, b.temperatures == nullptr);
  if (a.temperatures != nullptr) {
    EXPECT_EQ(a.temperatures->simulation.coldest, b.temperatures->simulation.coldest);
    EXPECT_EQ(a.temperatures->simulation.warmest, b.temperatures->simulation.warmest);
  }
  EXPECT_EQ(a.findings, b.findings);
  EXPECT_EQ(a.figures, b.figures);
  EXPECT_EQ(a.troubles, b.troubles);
  EXPECT_EQ(a.fingerprint, b.fingerprint);
}

}  // namespace

TEST(Solve, PlacesTheHalfAcresFourCircuits) {
  const Outcome outcome = solve(sample::half_acre());
  EXPECT_TRUE(outcome.troubles.empty()) << outcome.troubles[0].message();
  EXPECT_EQ(outcome.layout.trenches.size(), 4u);
  EXPECT_FALSE(outcome.layout.run.line.empty());
  EXPECT_FALSE(has_unaccepted_errors(outcome));
  for (const Finding& f : outcome.findings) EXPECT_NE(f.severity, Severity::error) << f.key;
  EXPECT_GT(outcome.figures.all().size(), 50u);
  EXPECT_EQ(outcome.fingerprint.size(), 12u);
}

TEST(Solve, GivesTheSameAnswerTwice) {
  expect_same(solve(crafted::plan()), solve(crafted::plan()));
}

TEST(Solve, SaysWhatIsMissingOnATinyLot) {
  const Outcome outcome = solve(sample::tiny_lot());
  EXPECT_TRUE(has_unaccepted_errors(outcome));
  EXPECT_TRUE(std::any_of(outcome.findings.begin(), outcome.findings.end(),
                          [](const Finding& f) { return f.rule == "circuits_missing"; }));
}

TEST(Solve, AnEmptyPlanGivesNoTrenchesAndAtMostHintsOnTheCoil) {
  const Outcome outcome = solve(sample::empty());
  EXPECT_TRUE(outcome.layout.trenches.empty());
  for (const Finding& f : outcome.findings) EXPECT_EQ(f.severity, Severity::hint) << f.key;
}

TEST(Solve, AcceptedErrorsNoLongerStandInTheWay) {
  Plan plan = sample::tiny_lot();
  for (const Finding& f : solve(plan).findings) plan = edit::with_acceptance(plan, {f.key, "known"});
  EXPECT_FALSE(has_unaccepted_errors(solve(plan)));
}

TEST(Solve, ARingThatCrossesItselfStopsTheLayoutAndNothingElse) {
  Plan plan = sample::half_acre();
  std::swap(plan.site.lot[0], plan.site.lot[1]);
  const Outcome outcome = solve(plan);
  EXPECT_FALSE(outcome.troubles.empty());
  EXPECT_TRUE(outcome.layout.trenches.empty());
  EXPECT_GT(outcome.coil.loops, 0);
  EXPECT_NE(outcome.figures.find("coil.pitch"), nullptr);
}

TEST(Solve, AWishOutOfBoundsStillShowsTheBuildableGround) {
  Plan plan = crafted::plan();
  plan.wishes.trench_width = -1;
  const Outcome outcome = solve(plan);
  ASSERT_EQ(outcome.troubles.size(), 1u);
  EXPECT_TRUE(outcome.layout.trenches.empty());
  EXPECT_FALSE(outcome.layout.buildable.empty());
}

TEST(Solve, ACoilThatCannotBeLaidSaysSoAndPlacesNothing) {
  Plan plan = crafted::plan();
  plan.wishes.coil_length = 20;
  const Outcome outcome = solve(plan);
  ASSERT_FALSE(outcome.troubles.empty());
  EXPECT_EQ(outcome.troubles[0].code, "coil_too_short");
  EXPECT_NE(outcome.troubles[0].value.find("m"), std::string::npos);
  plan.units = UnitSystem::us;
  EXPECT_NE(solve(plan).troubles[0].value.find("65'"), std::string::npos);
  EXPECT_EQ(outcome.coil.loops, 0);
  EXPECT_TRUE(outcome.layout.trenches.empty());
}

TEST(Solve, BadGroundLeavesTheLayoutStanding) {
  Plan plan = crafted::plan();
  plan.ground.swell = -3;
  const Outcome outcome = solve(plan);
  EXPECT_EQ(outcome.layout.trenches.size(), 2u);
  EXPECT_TRUE(outcome.dig.trenches.empty());
  EXPECT_EQ(outcome.figures.find("dig.slope"), nullptr);
}

TEST(Solver, RunsNothingAgainForTheSamePlan) {
  EXPECT_EQ(run_again([](Plan&) {}), runs(0, 0, 0, 0, 0, 0, 0));
}

TEST(Solver, TheTitleBlockRunsNothing) {
  EXPECT_EQ(run_again([](Plan& p) { p.title.project = "Another name"; }), runs(0, 0, 0, 0, 0, 0, 0));
}

TEST(Solver, AnAcceptanceRunsOnlyTheChecks) {
  EXPECT_EQ(run_again([](Plan& p) { p.accepted = {{"a", "b"}}; }), runs(0, 0, 0, 0, 0, 1, 0));
}

TEST(Solver, UnitsRunTroublesAndChecksWhichSpeakThem) {
  EXPECT_EQ(run_again([](Plan& p) { p.units = UnitSystem::us; }), runs(1, 0, 0, 0, 0, 1, 0));
}

TEST(Solver, SoilRunsTheDigButNoLayout) {
  EXPECT_EQ(run_again([](Plan& p) { p.ground.soil = SoilType::type_b; }), runs(1, 0, 0, 1, 0, 1, 1));
}

TEST(Solver, BeddingRunsTheDigButNoLayout) {
  EXPECT_EQ(run_again([](Plan& p) { p.wishes.bedding = 0.3; }), runs(1, 0, 0, 1, 0, 1, 1));
}

TEST(Solver, AFeaturesNoteRunsNoLayout) {
  EXPECT_EQ(run_again([](Plan& p) { p.site.features[0].note = "red roof"; }), runs(1, 0, 0, 0, 0, 1, 1));
}

TEST(Solver, HeaderPipeRunsNoLayout) {
  EXPECT_EQ(run_again([](Plan& p) { p.wishes.header_pipe = "2 in DR 11"; }),
            (StageRuns{1, 0, 0, 0, 0, 1, 0, 1, 1, 1}));
}

TEST(Solver, WetterSoilRunsTheTemperaturesButNoFlow) {
  EXPECT_EQ(run_again([](Plan& p) { p.thermal.soil.matter.saturation = 0.8; }),
            (StageRuns{1, 0, 0, 0, 0, 0, 1, 1, 1, 1}));
}

TEST(Solver, AntifreezeRunsFlowAndTemperatures) {
  EXPECT_EQ(run_again([](Plan& p) { p.flow.mass_fraction = 0.25; }),
            (StageRuns{1, 0, 0, 0, 0, 1, 0, 1, 1, 1}));
}

TEST(Solver, ACornerOfTheLotRunsTheLayoutButNoCoil) {
  const StageRuns r = run_again([](Plan& p) { p.site.lot[2].at.x -= 0.5; });
  EXPECT_EQ(r.coil, 0);
  EXPECT_EQ(r.layout, 1);
  EXPECT_EQ(r.checks, 1);
}

TEST(Solver, GivesTheSameAnswersAsSolveWhateverItSolvedBefore) {
  Solver solver;
  std::vector<Plan> plans = {crafted::plan(), sample::tiny_lot(), sample::empty(), crafted::plan()};
  plans[3].ground.soil = SoilType::type_a;
  plans.push_back(plans[3]);
  plans.back().wishes.unknown = CoilUnknown::coil_length;
  plans.push_back(plans.back());
  plans.back().wishes.trench_width = -1;
  for (const Plan& plan : plans) expect_same(solver.solve(plan), solve(plan));
}

TEST(Solver, AskedToStopReturnsWithoutPlacingAnythingAndSolvesAnewAfterwards) {
  std::stop_source source;
  source.request_stop();
  Solver solver;
  const Outcome stopped = solver.solve(crafted::plan(), source.get_token());
  EXPECT_TRUE(stopped.layout.trenches.empty());
  EXPECT_EQ(solver.runs(), StageRuns{});
  expect_same(solver.solve(crafted::plan()), solve(crafted::plan()));
}

}  // namespace underlawn
