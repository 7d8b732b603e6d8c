// SPDX-License-Identifier: GPL-3.0-or-later
// The loop as dug, solved again.
#include <gtest/gtest.h>

#include <cmath>

#include "base/csv.h"
#include "field/coil.h"
#include "files/plan_file.h"
#include "pipe/pipe_size.h"
#include "plan/circulation_of.h"
#include "plan/record/as_built_csv.h"
#include "plan/record/as_built_mends.h"
#include "plan/record/as_built_solve.h"
#include "plan/record/built_findings.h"
#include "plan/solve.h"
#include "support/sample_plans.h"
#include "thermal/loop_geometry.h"

namespace underlawn {
namespace {

using sample::kFoot;

const Plan& half_acre() {
  static const Plan plan = [] {
    Plan p = sample::half_acre();
    p.thermal.years = 5;
    return p;
  }();
  return plan;
}

const Outcome& planned() {
  static const Outcome outcome = solve(half_acre());
  return outcome;
}

Plan with(std::vector<BuiltTrench> trenches) {
  Plan p = half_acre();
  p.as_built.trenches = std::move(trenches);
  return p;
}

BuiltTrench stopped(int number, double length) {
  BuiltTrench t;
  t.number = number;
  t.length = length;
  t.stopped_by = StopCause::rock;
  return t;
}

const Trench& trench(const Layout& layout, int number) {
  for (const Trench& t : layout.trenches)
    if (t.number == number) return t;
  throw std::runtime_error("no such trench");
}

const Hold& hold(const std::vector<Hold>& holds, const std::string& key) {
  for (const Hold& h : holds)
    if (h.key == key) return h;
  throw std::runtime_error("no such hold");
}

TEST(AsBuilt, NothingSaidIsThePlanAndSolvesToItsFigures) {
  const AsBuiltAnswer built = solve_as_built(half_acre(), planned());
  EXPECT_FALSE(built.loop.changed);
  EXPECT_EQ(built.loop.layout, planned().layout);
  int compared = 0;
  for (const Figure& f : planned().figures.all())
    if (const Figure* again = built.outcome->figures.find(f.key)) {
      // Pieces are added up in another order.
      EXPECT_NEAR(again->value, f.value, 1e-12 * std::max(1.0, std::abs(f.value))) << f.key;
      ++compared;
    }
  EXPECT_GT(compared, 200);
  for (const Change& c : built.changes) EXPECT_DOUBLE_EQ(c.built, c.planned) << c.key;
  for (const Hold& h : built.holds) EXPECT_EQ(h.holds, h.held) << h.key;
}

// Every trench said to be as it was planned, its ends taped as the stake-out ties them.
TEST(AsBuilt, TapedWhereItWasPlannedItSolvesToTheSameFigures) {
  Plan p = half_acre();
  for (const Trench& t : planned().layout.trenches) {
    BuiltTrench b;
    b.number = t.number;
    for (const Tie& tie : planned().stake_out.ties) {
      if (distance(tie.at, t.head) < kSameStake && tie.cut > kFlattestCut) b.head = taped_from(tie);
      if (distance(tie.at, t.end) < kSameStake && tie.cut > kFlattestCut) b.end = taped_from(tie);
    }
    ASSERT_TRUE(b.head || b.end);
    p.as_built.trenches.push_back(b);
  }
  const AsBuiltAnswer built = solve_as_built(p, planned());
  EXPECT_TRUE(built.loop.remarks.empty());
  for (const BuiltPlace& place : built.loop.places) EXPECT_LT(distance(*place.planned, place.found.at), 0.01);
  for (const Change& c : built.changes)
    EXPECT_NEAR(c.built, c.planned, 1e-6 * std::abs(c.planned) + 1e-9) << c.key;
}

// The same trench made short by hand and solved stage by stage, without anything of the as-built.
TEST(AsBuilt, ATrenchThirtyPercentShortIsAsColdAsASeparateRunSays) {
  const double length = length_of(planned().layout.trenches[1]);
  const int number = planned().layout.trenches[1].number;
  const AsBuiltAnswer built = solve_as_built(with({stopped(number, 0.7 * length)}), planned());
  EXPECT_TRUE(built.loop.remarks.empty());

  Layout layout = planned().layout;
  Trench& t = layout.trenches[1];
  t.end = t.head + 0.7 * (t.end - t.head);
  CoilRequest r;
  r.unknown = CoilUnknown::coil_length;
  r.loop_diameter = t.coil.loop_diameter;
  r.pitch = t.coil.pitch;
  r.trench_length = 0.7 * length;
  r.pipe_diameter = find_pipe(half_acre().wishes.pipe)->outside_diameter;
  t.coil = solve_coil(r).value();
  EXPECT_LT(t.coil.coil_length, 0.72 * planned().layout.trenches[1].coil.coil_length);
  const Flow flow = solve_flow(layout, half_acre().wishes, half_acre().flow, planned().flow->sizes).value();
  KernelShelf shelf;
  const Temperatures heat =
      solve_temperatures(pipes_in_ground(layout, half_acre().wishes), *planned().surroundings,
                         half_acre().thermal, circulation_of(half_acre(), &flow, layout), shelf);

  EXPECT_NEAR(hold(built.holds, "coldest").built, heat.simulation.coldest, 1e-6);
  EXPECT_LT(heat.simulation.coldest, planned().temperatures->simulation.coldest - 0.05);
  EXPECT_NEAR(hold(built.holds, "balance").built, flow.design.imbalance, 1e-9);
  EXPECT_GT(flow.design.imbalance, planned().flow->design.imbalance + 0.05);
}

TEST(AsBuilt, AShortTrenchKeepsItsHeadItsLineAndItsPitch) {
  const Trench& was = planned().layout.trenches[2];
  const BuiltLoop loop = built_loop(with({stopped(was.number, 20)}), planned().layout);
  const Trench& is = trench(loop.layout, was.number);
  EXPECT_EQ(is.head, was.head);
  EXPECT_NEAR(length_of(is), 20, 1e-9);
  EXPECT_NEAR(cross(is.end - is.head, was.end - was.head), 0, 1e-6);
  EXPECT_NEAR(is.coil.pitch, was.coil.pitch, 1e-9);
  EXPECT_EQ(loop.layout.header, planned().layout.header);
  EXPECT_TRUE(loop.changed);
}

TEST(AsBuilt, PipeReallyLaidAndDepthAreTaken) {
  BuiltTrench b = stopped(planned().layout.trenches[0].number, 25);
  b.pipe = 243.84;
  b.depth = 1.6;
  b.end_depth = 1.4;
  const BuiltLoop loop = built_loop(with({b}), planned().layout);
  const Trench& is = trench(loop.layout, b.number);
  EXPECT_NEAR(is.coil.coil_length, 243.84, 1e-6);
  EXPECT_LT(is.coil.pitch, planned().layout.trenches[0].coil.pitch);
  EXPECT_DOUBLE_EQ(is.depth, 1.5);
}

TEST(AsBuilt, PipeThatCannotLieThereIsRefusedAndThePlanStands) {
  BuiltTrench b = stopped(planned().layout.trenches[0].number, 25);
  b.pipe = 9000;
  const BuiltLoop loop = built_loop(with({b}), planned().layout);
  ASSERT_EQ(loop.remarks.size(), 1u);
  EXPECT_NE(loop.remarks[0].message().find("rench"), std::string::npos);
  EXPECT_EQ(trench(loop.layout, b.number), planned().layout.trenches[0]);
}

TEST(AsBuilt, TheHeaderFollowsAHeadThatMovedAndLetsGoOfOneThatIsNotThere) {
  const Trench& last = planned().layout.trenches.back();
  BuiltTrench moved;
  moved.number = last.number;
  const Point aside = left_normal(unit(last.end - last.head));
  moved.head = BuiltPoint{{}, true, last.head + 0.8 * aside};
  moved.end = BuiltPoint{{}, true, last.end + 0.8 * aside};
  const BuiltLoop loop = built_loop(with({moved}), planned().layout);
  EXPECT_TRUE(header_tree(loop.layout));
  EXPECT_NEAR(std::abs(loop.layout.header.length - planned().layout.header.length), 0.8, 0.25);

  for (const Trench& t : planned().layout.trenches) {
    BuiltTrench gone;
    gone.number = t.number;
    gone.fate = TrenchFate::left_out;
    const BuiltLoop less = built_loop(with({gone}), planned().layout);
    EXPECT_EQ(less.layout.trenches.size(), planned().layout.trenches.size() - 1);
    const auto tree = header_tree(less.layout);
    ASSERT_TRUE(tree) << tree.error().message();
    EXPECT_EQ(tree->front().feeds, static_cast<int>(planned().layout.trenches.size()) - 1);
    EXPECT_LE(less.layout.header.length, planned().layout.header.length + 1e-9);
  }
}

TEST(AsBuilt, AnAddedTrenchIsFed) {
  const Trench& first = planned().layout.trenches.front();
  BuiltTrench more;
  more.number = 9;
  more.fate = TrenchFate::added;
  const Point aside = left_normal(unit(first.end - first.head));
  more.head = BuiltPoint{{}, true, first.head + -3.7 * aside};
  more.end = BuiltPoint{{}, true, first.head + -3.7 * aside + 15 * unit(first.end - first.head)};
  const BuiltLoop loop = built_loop(with({more}), planned().layout);
  EXPECT_TRUE(loop.remarks.empty());
  ASSERT_EQ(loop.layout.trenches.size(), planned().layout.trenches.size() + 1);
  EXPECT_NEAR(length_of(loop.layout.trenches.back()), 15, 1e-9);
  EXPECT_TRUE(header_tree(loop.layout));
}

TEST(AsBuilt, TapesThatCannotBeLeaveThePlannedPlace) {
  BuiltTrench b;
  b.number = planned().layout.trenches[0].number;
  b.head = BuiltPoint{{{"A", 1}, {"B", 1}}, true, {}};
  const BuiltLoop loop = built_loop(with({b}), planned().layout);
  ASSERT_EQ(loop.remarks.size(), 1u);
  EXPECT_EQ(loop.remarks[0].code, "tapes_do_not_meet");
  EXPECT_EQ(loop.layout, planned().layout);
}

TEST(AsBuilt, UtilitiesLieAsDeepAsTheyWereMeasured) {
  ASSERT_FALSE(planned().layout.crossings.empty());
  Plan p = half_acre();
  const int id = planned().layout.crossings.front().feature_id;
  p.as_built.crossings = {{id, "", UtilityKind::electric, {}, 0.55, {}, ""}};
  const AsBuiltAnswer built = solve_as_built(p, planned());
  EXPECT_DOUBLE_EQ(built.loop.layout.crossings.front().utility_depth, 0.55);
}

// Run at 1.2 m, the first leg of the header at 1.9 m, other legs at 1.6 m: pipe lies so, things are crossed
// so and the table says so; nothing is averaged.
TEST(AsBuilt, EveryLegLiesAsDeepAsItWasMeasured) {
  Plan p = half_acre();
  p.as_built.run_depth = 1.2;
  p.as_built.header_depth = 1.6;
  p.as_built.header = {{{}, 1.9}};
  const AsBuiltAnswer built = solve_as_built(p, planned());
  const Layout& l = built.loop.layout;
  EXPECT_TRUE(built.loop.changed);
  EXPECT_EQ(l.header.legs, planned().layout.header.legs);
  EXPECT_EQ(l.run.line, planned().layout.run.line);
  ASSERT_EQ(l.header.depths.size(), l.header.legs.size());
  ASSERT_FALSE(l.header.depths.empty());
  EXPECT_EQ(l.header.depths[0], 1.9);
  for (std::size_t i = 1; i < l.header.depths.size(); ++i) EXPECT_EQ(l.header.depths[i], 1.6);
  for (const Crossing& c : l.crossings) EXPECT_TRUE(c.conduit != Conduit::run || c.trench_depth == 1.2);
  const double radius = find_pipe(p.wishes.header_pipe)->outside_diameter / 2;
  double metres = 0;
  for (const auto& pipe : pipes_in_ground(l, p.wishes).pipes)
    if (std::abs(pipe.depth - (1.9 - radius)) < 1e-9) metres += distance(pipe.line.a, pipe.line.b);
  EXPECT_NEAR(metres, 2 * length(l.header.legs[0]), 1e-6);
  for (const BuiltRow& row : built_rows(p, planned(), built))
    EXPECT_TRUE(!row.point.starts_with("run") || row.depth == 1.2) << row.point;
  // So deep it is dug, less what two cuts hold together.
  double header = 0;
  for (std::size_t i = 0; i < l.header.legs.size(); ++i)
    header += length(l.header.legs[i]) * p.wishes.run_width * l.header.depths[i];
  const DigPlan& dug = built.outcome->dig;
  EXPECT_NEAR(dug.header.bank + dug.header.bank_met, header, 1e-6);
  EXPECT_NEAR(dug.run.bank + dug.run.bank_met, dug.run.length * p.wishes.run_width * 1.2, 1e-6);
  // What is deeper is warmer in winter.
  Plan shallow = half_acre();
  shallow.as_built.run_depth = shallow.as_built.header_depth = 0.9;
  EXPECT_GT(hold(built.holds, "coldest").built,
            hold(solve_as_built(shallow, planned()).holds, "coldest").built);
}

// Sides at 1:1: by the prismoid of the sections at head, middle and end.
TEST(AsBuilt, ATrenchDugDeeperAtItsEndIsAPrismoid) {
  Plan p = half_acre();
  p.dig.coil_sides = Sides::slope;
  p.dig.slope = 1;
  const Trench& first = planned().layout.trenches[0];
  BuiltTrench b;
  b.number = first.number;
  b.depth = 1.6;
  b.end_depth = 2.2;
  p.as_built.trenches = {b};
  const AsBuiltAnswer built = solve_as_built(p, planned());
  const auto section = [&](double depth) { return depth * (first.width + depth); };
  const EarthWork& w = built.outcome->dig.trenches.at(0);
  EXPECT_NEAR(w.bank + w.bank_met, w.length / 6 * (section(1.6) + 4 * section(1.9) + section(2.2)), 1e-6);
  EXPECT_NEAR(built.outcome->figures.at("trench." + std::to_string(b.number) + ".mean_square_depth").value,
              (1.6 * 1.6 + 1.6 * 2.2 + 2.2 * 2.2) / 3, 1e-9);
}

TEST(AsBuilt, TheTableGivesEveryPointBackFromItsOwnTie) {
  const Plan p = with({stopped(planned().layout.trenches[0].number, 20)});
  const AsBuiltAnswer built = solve_as_built(p, planned());
  int tied = 0;
  for (const BuiltRow& row : built_rows(p, planned(), built)) {
    if (!row.tie || row.tie->cut < kFlattestCut) continue;
    ++tied;
    const auto again = find_point_from_tie(built.outcome->stake_out, *row.tie);
    ASSERT_TRUE(again);
    EXPECT_LT(distance(*again, row.at), 0.01) << row.point;
  }
  EXPECT_GE(tied, 6);
  const std::string csv = as_built_csv(p, planned(), built);
  EXPECT_EQ(csv.substr(0, 6), "point,");
  EXPECT_NE(csv.find("\n" + std::to_string(p.as_built.trenches[0].number) + " end,"), std::string::npos);
}

// Of figures in the plan's units a reader of the table sees the unit.
TEST(AsBuilt, TheTableIsInThePlansUnitsAndSaysWhatStoppedATrench) {
  Plan p = with({stopped(planned().layout.trenches[0].number, 20 * kFoot)});
  p.units = UnitSystem::us;
  const AsBuiltAnswer built = solve_as_built(p, planned());
  const auto table = csv_from_text(as_built_csv(p, planned(), built), "bad", "the table");
  ASSERT_TRUE(table);
  const auto& heads = table->rows.front().fields;
  const auto column = [&](const std::string& head) {
    return static_cast<std::size_t>(std::find(heads.begin(), heads.end(), head) - heads.begin());
  };
  ASSERT_LT(column("x ft"), heads.size());
  ASSERT_LT(column("stopped by"), heads.size());
  const auto &head = table->rows[1].fields, &end = table->rows[2].fields;
  const double along = std::hypot(std::stod(end[column("x ft")]) - std::stod(head[column("x ft")]),
                                  std::stod(end[column("y ft")]) - std::stod(head[column("y ft")]));
  EXPECT_NEAR(along, 20, 0.002);
  EXPECT_EQ(end[column("stopped by")], "rock");
  EXPECT_EQ(head[column("stopped by")], "");
  for (const std::string& field : end) EXPECT_LT(field.size(), 14u) << field;
}

TEST(AsBuilt, TheFreezingPointThatWasReadGoesBeforeThePlannedOne) {
  Plan p = half_acre();
  p.record.fill.freezing_point = -4.4;
  const Hold read = hold(solve_as_built(p, planned()).holds, "freezing");
  EXPECT_EQ(read.built, -4.4);
  EXPECT_FALSE(read.holds);
  EXPECT_TRUE(read.held);
  EXPECT_TRUE(anything_built(p));
  p.record.fill.freezing_point = read.limit - 0.5;
  EXPECT_TRUE(hold(solve_as_built(p, planned()).holds, "freezing").holds);
}

// One trench three feet nearer to the next than planned.
TEST(AsBuilt, ASpacingBrokenByDiggingIsFoundAndWhatThePlanHasIsNot) {
  EXPECT_TRUE(solve_as_built(half_acre(), planned()).findings.empty());
  const Trench &a = planned().layout.trenches[0], &b = planned().layout.trenches[1];
  const Point along = unit(a.end - a.head);
  const double apart = std::abs(cross(along, b.head - a.head));
  Point over = b.head - a.head;
  over = unit(over - dot(over, along) * along);
  BuiltTrench moved;
  moved.number = a.number;
  moved.head = BuiltPoint{{}, true, a.head + 3 * kFoot * over};
  moved.end = BuiltPoint{{}, true, a.end + 3 * kFoot * over};
  const auto findings = solve_as_built(with({moved}), planned()).findings;
  const auto at = std::ranges::find(findings, "trench_spacing", &Finding::rule);
  ASSERT_NE(at, findings.end());
  EXPECT_NEAR(at->measured, apart - 3 * kFoot, 0.01);
  const std::string words = built_finding_words(*at, UnitSystem::metric);
  EXPECT_NE(words.find(print_quantity(Quantity::length, at->measured, UnitSystem::metric)),
            std::string::npos);
  EXPECT_NE(words.find(print_quantity(Quantity::length, at->required, UnitSystem::metric)),
            std::string::npos);
}

// ---- mends ----

// The house needs so much that the plan just holds and the as-built does not.
struct Strained {
  Plan plan;
  Outcome planned;
};
const Strained& strained() {
  static const Strained made = [] {
    Strained s;
    s.plan = half_acre();
    s.plan.thermal.coldest_allowed = planned().temperatures->simulation.coldest - 0.1;
    s.plan.as_built.trenches = {stopped(planned().layout.trenches[1].number, 12)};
    s.planned = solve(s.plan);
    return s;
  }();
  return made;
}

TEST(AsBuiltMends, EachIsWorkedOutAndTheLeastThatHolds) {
  LaidSolver solver;
  const auto& [plan, outcome] = strained();
  const AsBuiltAnswer built = solve_as_built(plan, outcome, solver);
  ASSERT_TRUE(hold(built.holds, "coldest").held);
  ASSERT_FALSE(hold(built.holds, "coldest").holds);
  ASSERT_FALSE(hold(built.holds, "balance").holds);
  const Mends mends = find_mends(plan, outcome, built, solver);
  ASSERT_FALSE(mends.all.empty());
  bool throttles = false;
  for (const Mend& m : mends.all) {
    if (m.kind == MendKind::throttle) {
      throttles = true;
      EXPECT_TRUE(hold(m.holds, "balance").holds) << m.what;
      continue;
    }
    if (m.kind == MendKind::antifreeze || m.kind == MendKind::together) continue;  // of another plan
    // Again, from the mend's own layout, by a solver that knows nothing.
    Plan p = built.plan;
    p.wishes.given = given_from(m.layout);
    const Outcome again = LaidSolver().solve(p, m.layout);
    EXPECT_NEAR(hold(m.holds, "coldest").built, again.temperatures->simulation.coldest, 1e-6) << m.what;
    const bool warmer = hold(m.holds, "coldest").built > hold(built.holds, "coldest").built;
    EXPECT_TRUE(warmer || hold(m.holds, "balance").holds) << m.what;
    if (m.kind != MendKind::more_circuit || !hold(m.holds, "coldest").holds) continue;
    // Two thirds of a metre less would not do.
    Layout less = m.layout;
    Trench& t = less.trenches.back();
    const double length = length_of(t) - 0.67;
    t.end = t.head + length * unit(t.end - t.head);
    CoilRequest r;
    r.unknown = CoilUnknown::coil_length;
    r.loop_diameter = t.coil.loop_diameter;
    r.pitch = t.coil.pitch;
    r.trench_length = length;
    r.pipe_diameter = find_pipe(p.wishes.pipe)->outside_diameter;
    t.coil = solve_coil(r).value();
    p.wishes.given = given_from(less);
    EXPECT_LT(LaidSolver().solve(p, less).temperatures->simulation.coldest, plan.thermal.coldest_allowed);
  }
  EXPECT_TRUE(throttles);
}

// A mend that is told leaves something better than nothing does, and taken it does what it was told to do.
TEST(AsBuiltMends, NoneIsWorseThanNothingAndOneTakenDoesWhatItSaid) {
  LaidSolver solver;
  const auto& [plan, outcome] = strained();
  const AsBuiltAnswer built = solve_as_built(plan, outcome, solver);
  const Mends mends = find_mends(plan, outcome, built, solver);
  int taken = 0;
  for (const Mend& m : mends.all) {
    bool better = hold(m.holds, "coldest").built > hold(built.holds, "coldest").built;
    for (const Hold& h : m.holds) better |= h.holds && !hold(built.holds, h.key).holds;
    EXPECT_TRUE(better) << m.what;
    EXPECT_TRUE(m.take != nullptr || !m.by_hand.empty()) << m.what;
    if (m.kind == MendKind::more_circuit) {
      EXPECT_NE(m.what.find(" from "), std::string::npos) << m.what;
    }
    if (!m.take || m.kind == MendKind::throttle || m.kind == MendKind::together) continue;
    Plan edited = plan;
    m.take(edited);
    EXPECT_NE(edited, plan) << m.what;
    const AsBuiltAnswer again = solve_as_built(edited, outcome);
    EXPECT_TRUE(again.loop.remarks.empty()) << m.what;
    EXPECT_NEAR(hold(again.holds, "coldest").built, hold(m.holds, "coldest").built, 0.02) << m.what;
    ++taken;
  }
  EXPECT_GE(taken, 1);
}

// What the fluid was read as stands until it is read again; the mend is to bring it to the plan's.
TEST(AsBuiltMends, AFluidReadTooWeakIsBroughtToThePlan) {
  Plan p = half_acre();
  p.record.fill.freezing_point = -4.4;
  LaidSolver solver;
  const AsBuiltAnswer built = solve_as_built(p, planned(), solver);
  const Mends mends = find_mends(p, planned(), built, solver);
  const auto at = std::ranges::find(mends.all, MendKind::antifreeze, &Mend::kind);
  ASSERT_NE(at, mends.all.end());
  EXPECT_TRUE(hold(at->holds, "freezing").holds);
  EXPECT_NE(at->by_hand.find("Record page"), std::string::npos);
}

TEST(AsBuiltMends, ValvesThatAreTakenAreNotedOnTheirTrenches) {
  LaidSolver solver;
  const auto& [plan, outcome] = strained();
  const AsBuiltAnswer built = solve_as_built(plan, outcome, solver);
  const Mends mends = find_mends(plan, outcome, built, solver);
  const auto at = std::ranges::find(mends.all, MendKind::throttle, &Mend::kind);
  ASSERT_NE(at, mends.all.end());
  ASSERT_TRUE(at->take);
  Plan edited = plan;
  at->take(edited);
  at->take(edited);  // noted once
  for (int number : at->trenches) {
    const auto said = std::ranges::find(edited.as_built.trenches, number, &BuiltTrench::number);
    ASSERT_NE(said, edited.as_built.trenches.end());
    EXPECT_EQ(said->note.find("balancing valve"), said->note.rfind("balancing valve"));
    EXPECT_NE(said->note.find("balancing valve"), std::string::npos);
  }
}

TEST(AsBuiltMends, ValvesBalanceByTheHeadTheyTake) {
  const auto& [plan, outcome] = strained();
  const AsBuiltAnswer built = solve_as_built(plan, outcome);
  const auto made = throttled(*built.outcome->flow, built.plan.flow, 0.05);
  ASSERT_TRUE(made);
  EXPECT_LE(made->flow.design.imbalance, 0.05);
  int closed = 0;
  for (std::size_t c = 0; c < made->k.size(); ++c) {
    if (!(made->k[c] > 0)) continue;
    ++closed;
    const auto pipe = static_cast<std::size_t>(made->flow.loop.circuits[c]);
    const double v = made->flow.design.flow.pipes[pipe].velocity;
    EXPECT_NEAR(made->head[c], made->k[c] * v * v / (2 * 9.80665), 1e-9);
  }
  EXPECT_GE(closed, 1);
  EXPECT_LT(closed, static_cast<int>(made->k.size()));
}

TEST(AsBuiltMends, AntifreezeIsAskedForAtTheTemperaturesItMakes) {
  Plan p = half_acre();
  p.flow.mass_fraction = 0.16;
  const Outcome thin = solve(p);
  ASSERT_NE(thin.flow, nullptr);
  LaidSolver solver;
  const AsBuiltAnswer built = solve_as_built(p, thin, solver);
  ASSERT_FALSE(hold(built.holds, "freezing").holds);
  const Mends mends = find_mends(p, thin, built, solver);
  const auto at = std::find_if(mends.all.begin(), mends.all.end(),
                               [](const Mend& m) { return m.kind == MendKind::antifreeze; });
  ASSERT_NE(at, mends.all.end());
  EXPECT_TRUE(hold(at->holds, "freezing").holds);
  EXPECT_NEAR(hold(at->holds, "freezing").built, hold(at->holds, "freezing").limit, 0.6);
}

TEST(AsBuiltMends, NoneWhereAllHolds) {
  LaidSolver solver;
  Plan p = half_acre();
  p.thermal.coldest_allowed = -20;
  p.thermal.warmest_allowed = 60;
  p.flow.circulator.curve.clear();
  p.flow.flush_cart.curve.clear();
  const Outcome o = solve(p);
  const AsBuiltAnswer built = solve_as_built(p, o, solver);
  EXPECT_TRUE(all_hold(built.holds));
  const Mends mends = find_mends(p, o, built, solver);
  EXPECT_TRUE(mends.all.empty());
  EXPECT_TRUE(mends.not_found.empty());
}

// What the plan did not hold either is no news; what digging took is.
TEST(AsBuilt, IsWorseOnlyWhereDiggingLostSomething) {
  const auto holds = [](double planned, double built) {
    return std::vector<Hold>{
        {"pump", "Flow", Quantity::flow, planned, built, 10, true, planned >= 10, built >= 10}};
  };
  EXPECT_FALSE(worse_than_planned(holds(11, 10.5)));
  EXPECT_TRUE(worse_than_planned(holds(11, 9.9)));
  EXPECT_FALSE(worse_than_planned(holds(8.4, 8.4)));
  EXPECT_FALSE(worse_than_planned(holds(8.4, 8.8)));
  EXPECT_FALSE(worse_than_planned(holds(8.4, 8.35)));
  EXPECT_TRUE(worse_than_planned(holds(8.4, 8.2)));
  EXPECT_FALSE(worse_than_planned({}));
}

}  // namespace
}  // namespace underlawn
