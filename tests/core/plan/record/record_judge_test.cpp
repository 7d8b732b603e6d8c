// SPDX-License-Identifier: GPL-3.0-or-later
// What a record tells: flushing, fill, what came before what.
#include "plan/record/record_judge.h"

#include <gtest/gtest.h>

#include "flow/purge.h"
#include "plan/checks/rules.h"
#include "plan/plan_troubles.h"
#include "plan/solve.h"
#include "support/flow_layouts.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

FlowWishes wishes() {
  FlowWishes w;
  w.run_size = "2 in DR 11";
  w.header_sizes = {"1-1/4 in DR 11"};
  return w;
}

Layout four_circuits() {
  return hand_layout(2, 2, false);
}

LoopNetwork network_of(const Layout& layout) {
  const HeaderSizes sizes = typed_sizes(Wishes{}, wishes()).value();
  return loop_network(layout, Wishes{}, wishes(), sizes).value();
}

// Pa over a loop without its heat pump, water of 10 deg C, by solve_network on the network as it is.
double drop_over(const LoopNetwork& loop, double flow) {
  const FluidProperties water = fluid_properties(Fluid::water, 0, kPurgeTemperature).value();
  const NetworkFlow f = solve_network(loop.network, water, flow).value();
  return (f.head_loss - f.pipes[0].head_loss) * water.density * 9.80665;
}

// The same loop with one trench never laid: what a circuit that lets nothing through leaves.
double drop_without(int number, double flow) {
  Layout layout = four_circuits();
  std::erase_if(layout.trenches, [number](const Trench& t) { return t.number == number; });
  return drop_over(network_of(layout), flow);
}

FlushReading reading(double flow, double drop) {
  FlushReading r;
  r.flow = flow;
  r.pressure_drop = drop;
  r.duration = 3600;
  r.air = AirSeen::none;
  r.water = WaterSeen::clear;
  return r;
}

FlushJudgement judged(const FlushReading& r) {
  static const LoopNetwork loop = network_of(four_circuits());
  return judge_flush(loop, wishes(), r, "Flushing 1").value();
}

Tone tone(const std::vector<RecordLine>& lines, const std::string& key) {
  for (const RecordLine& l : lines)
    if (l.key == key) return l.tone;
  ADD_FAILURE() << "no line " << key;
  return Tone::open;
}

TEST(FlushJudge, AsksForTheFlowThatFlushingIsPlannedWith) {
  const Purge purge = purge_loop(network_of(four_circuits()), wishes()).value();
  const FlushJudgement j = judged({});
  EXPECT_NEAR(j.asked, purge.together.flow, 1e-6 * purge.together.flow);
  EXPECT_NEAR(j.time_asked, purge.together.time, 1e-3 * purge.together.time);
  EXPECT_NEAR(j.expected_at_asked, drop_over(network_of(four_circuits()), j.asked),
              1e-3 * j.expected_at_asked);
  EXPECT_EQ(tone(j.lines, "flush.drop"), Tone::open);
}

TEST(FlushJudge, ASoundLoopReadsLikeAllItsCircuits) {
  const double flow = 1.05 * judged({}).asked;
  const FlushJudgement j = judged(reading(flow, drop_over(network_of(four_circuits()), flow)));
  EXPECT_EQ(j.flowing, 4);
  EXPECT_EQ(tone(j.lines, "flush.drop"), Tone::good);
  EXPECT_EQ(tone(j.lines, "flush.flow"), Tone::good);
  EXPECT_EQ(tone(j.lines, "flush.time"), Tone::good);
}

// The reading comes from a loop in which the circuit was never laid.
TEST(FlushJudge, ACircuitThatLetsNothingThroughShows) {
  const double flow = judged({}).asked;
  for (const Trench& t : four_circuits().trenches) {
    const double drop = drop_without(t.number, flow);
    const FlushJudgement j = judged(reading(flow, drop));
    EXPECT_EQ(j.flowing, 3) << t.number;
    EXPECT_EQ(tone(j.lines, "flush.drop"), Tone::bad);
    ASSERT_GE(j.drops.size(), 2u);
    EXPECT_GE(drop, 0.99 * j.drops[1].least);
    EXPECT_LE(drop, 1.01 * j.drops[1].most);
  }
}

TEST(FlushJudge, ABypassAndABlockedRunShow) {
  const double flow = judged({}).asked, all = judged({}).expected_at_asked;
  EXPECT_EQ(judged(reading(flow, 0.5 * all)).flowing, 0);
  EXPECT_EQ(tone(judged(reading(flow, 0.5 * all)).lines, "flush.drop"), Tone::bad);
  EXPECT_EQ(judged(reading(flow, 60 * all)).flowing, 0);
  EXPECT_EQ(tone(judged(reading(flow, 60 * all)).lines, "flush.drop"), Tone::bad);
}

TEST(FlushJudge, TooLittleFlowTimeOrClarityIsSaid) {
  FlushReading r = reading(0.8 * judged({}).asked, 1e5);
  r.duration = 60;
  r.air = AirSeen::bubbles;
  r.water = WaterSeen::cloudy;
  const FlushJudgement j = judged(r);
  for (const char* key : {"flush.flow", "flush.time", "flush.air", "flush.water"})
    EXPECT_EQ(tone(j.lines, key), Tone::bad) << key;
}

// Behind open valves the widest pipe on the way governs: the run.
TEST(FlushJudge, OneOpenCircuitIsAskedForTheRunsVelocityAndAnUnknownOneIsRefused) {
  FlushReading one;
  one.open = {four_circuits().trenches.front().number};
  const double bore = find_pipe("2 in DR 11")->average_bore();
  EXPECT_NEAR(judged(one).asked, wishes().purge_velocity * 3.14159265 / 4 * bore * bore, 1e-6);
  one.open = {77};
  const auto refused = judge_flush(network_of(four_circuits()), wishes(), one, "Flushing 1");
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().value, "77");
}

struct Filled {
  Plan plan;
  Flow flow;
};
Filled filled(std::optional<double> freezing, double share_put_in = 1) {
  Plan p;
  p.flow = wishes();
  p.flow.mass_fraction = 0.25;
  Flow f = solve_flow(four_circuits(), p.wishes, p.flow).value();
  p.record.fill.freezing_point = freezing;
  p.record.fill.put_in = share_put_in * f.antifreeze.concentrate;
  return {p, f};
}
FillJudgement judge(const Filled& f) {
  return judge_fill(f.plan, f.flow, f.plan.flow.coldest_temperature);
}

TEST(FillJudge, AsPlannedIsGoodAndTellsTheLoopsVolume) {
  const Filled f = filled(freezing_point(Fluid::propylene_glycol, 0.25).value());
  const FillJudgement j = judge(f);
  EXPECT_EQ(tone(j.lines, "fill.freezing"), Tone::good);
  EXPECT_EQ(tone(j.lines, "fill.amount"), Tone::good);
  ASSERT_TRUE(j.mass_fraction && j.volume);
  EXPECT_NEAR(*j.mass_fraction, 0.25, 1e-3);
  // Volumes before mixing against the mixed volume: they differ by the contraction, below 2 %.
  EXPECT_NEAR(*j.volume / f.flow.volume, 1, 0.02);
}

// What is put in place of what is taken out makes, by plain sums of volumes, the share that is needed.
TEST(FillJudge, WeakFluidIsTakenOutAndReplaced) {
  const Filled f = filled(freezing_point(Fluid::propylene_glycol, 0.10).value(), 0.4);
  const FillJudgement j = judge(f);
  EXPECT_EQ(tone(j.lines, "fill.freezing"), Tone::bad);
  ASSERT_TRUE(j.exchange);
  const double have = volume_fraction(Fluid::propylene_glycol, 0.10);
  const double after = (have * (f.flow.volume - *j.exchange) + *j.exchange) / f.flow.volume;
  const double need = volume_fraction(Fluid::propylene_glycol,
                                      concentration_for(Fluid::propylene_glycol, j.wanted_freezing).value());
  EXPECT_NEAR(after, need, 2e-3);
}

TEST(FillJudge, ReadingAndAmountThatDoNotAgreeAreDoubted) {
  const Filled f = filled(freezing_point(Fluid::propylene_glycol, 0.25).value(), 0.6);
  EXPECT_EQ(tone(judge(f).lines, "fill.amount"), Tone::doubt);
  Filled half = filled(freezing_point(Fluid::propylene_glycol, 0.25).value());
  half.plan.record.fill.strength = 0.5;
  EXPECT_NEAR(judge(half).asked_product, 2 * half.flow.antifreeze.concentrate, 1e-12);
}

TEST(FillJudge, PressureIsJudgedByTheSeasons) {
  Filled f = filled(-15.0);
  const auto asked = judge(f).asked_charge;
  ASSERT_TRUE(asked);
  f.plan.record.fill.pressure = asked->at_fill;
  EXPECT_EQ(tone(judge(f).lines, "fill.pressure"), Tone::good);
  f.plan.record.fill.pressure = asked->at_fill / 2;
  EXPECT_EQ(tone(judge(f).lines, "fill.pressure"), Tone::bad);
}

std::string words(const std::vector<RecordLine>& lines, const std::string& key) {
  for (const RecordLine& l : lines)
    if (l.key == key) return l.words;
  return "";
}

TEST(FillJudge, LessPressureThanAskedIsNeverCalledGood) {
  Filled f = filled(-15.0);
  const double asked = judge(f).asked_charge->at_fill;
  f.plan.record.fill.pressure = asked - 2e3;
  EXPECT_EQ(tone(judge(f).lines, "fill.pressure"), Tone::doubt);
  EXPECT_NE(words(judge(f).lines, "fill.pressure").find("less than asked"), std::string::npos);
  f.plan.record.fill.pressure = asked + 1;
  EXPECT_EQ(tone(judge(f).lines, "fill.pressure"), Tone::good);
}

// More loop than is drawn cannot be a part that was not filled, nor less one a spill.
TEST(FillJudge, TheWordsOfAVolumeThatIsOffFollowItsSign) {
  const double read = freezing_point(Fluid::propylene_glycol, 0.25).value();
  const Filled more = filled(read, 1.4), less = filled(read, 0.6);
  ASSERT_GT(*judge(more).volume, more.flow.volume);
  const std::string larger = words(judge(more).lines, "fill.amount");
  EXPECT_EQ(larger.find("not filled"), std::string::npos);
  EXPECT_NE(larger.find("spilt"), std::string::npos);
  ASSERT_LT(*judge(less).volume, less.flow.volume);
  const std::string smaller = words(judge(less).lines, "fill.amount");
  EXPECT_NE(smaller.find("not filled"), std::string::npos);
  EXPECT_EQ(smaller.find("spilt"), std::string::npos);
}

TEST(RecordJudge, AResultThatTheLinesDoNotBearOutIsSaid) {
  Plan p = sample::half_acre();
  p.record.test.start = "2026-05-14 07:30";
  p.record.test.end = "2026-05-14 08:00";
  const auto told = [&] { return words(judge_record(p, nullptr, nullptr).test, "test.result"); };
  p.record.test.result = TestResult::failed;
  EXPECT_EQ(told(), "");
  p.record.test.result = TestResult::passed;
  EXPECT_NE(told().find("Duration of the test"), std::string::npos);
  p.record.test.end = "2026-05-15 07:30";
  EXPECT_EQ(told(), "");
}

JobRecord record(const std::string& covered, const std::string& test_end, TestResult result) {
  JobRecord r;
  r.test.joints_covered = covered;
  r.test.end = test_end;
  r.test.result = result;
  return r;
}

TEST(RecordOrder, JointsBuriedBeforeTheirTestAreFound) {
  const auto found = [](const JobRecord& r, AsBuilt built = {}) {
    Plan p;
    p.record = r;
    p.as_built = std::move(built);
    return checks::joint_buried_untested(p, {}).size();
  };
  EXPECT_EQ(found({}), 0u);
  EXPECT_EQ(found(record("2026-05-14 15:00", "2026-05-14 14:30", TestResult::passed)), 0u);
  EXPECT_EQ(found(record("2026-05-14", "2026-05-14 14:30", TestResult::passed)), 0u);
  EXPECT_EQ(found(record("2026-05-14 11:00", "2026-05-14 14:30", TestResult::passed)), 1u);
  EXPECT_EQ(found(record("2026-05-13", "2026-05-14 14:30", TestResult::passed)), 1u);
  EXPECT_EQ(found(record("2026-05-15", "2026-05-14 14:30", TestResult::failed)), 1u);
  EXPECT_EQ(found(record("2026-05-15", "", TestResult::not_said)), 1u);
  AsBuilt built;
  built.trenches.push_back({});
  built.trenches[0].number = 3;
  built.trenches[0].filled_on = "2026-05-14 10:00";
  EXPECT_EQ(found(record("", "2026-05-14 14:30", TestResult::passed), built), 1u);
  built.trenches[0].filled_on = "2026-05-16";
  EXPECT_EQ(found(record("", "2026-05-14 14:30", TestResult::passed), built), 0u);
}

TEST(RecordFaults, SpeakOnlyOfWhatIsRecorded) {
  Plan p = sample::half_acre();
  p.thermal.years = 1;
  const Outcome o = solve(p);
  EXPECT_TRUE(checks::record_faults(p, o).empty());
  p.record.test.medium = TestMedium::air;
  p.record.flush.push_back(reading(1e-4, 1e5));
  p.record.fill.freezing_point = -0.5;
  const auto found = checks::record_faults(p, o);
  const auto there = [&](const std::string& key) {
    return std::any_of(found.begin(), found.end(),
                       [&](const Finding& f) { return f.key == "record_faults/" + key; });
  };
  EXPECT_TRUE(there("test.medium"));
  EXPECT_TRUE(there("flush.1.flow"));
  EXPECT_TRUE(there("fill.freezing"));
  EXPECT_EQ(found.front().severity, Severity::error);
}

TEST(RecordTroubles, NameValueAndBound) {
  Plan p;
  p.units = UnitSystem::metric;
  EXPECT_TRUE(plan_troubles(p).empty());
  p.record.fill.ph = 15;
  p.record.test.start = "soon";
  p.record.flush.push_back(reading(-1, 1e5));
  BuiltTrench t;
  t.number = 2;
  t.length = -4;
  p.as_built.trenches = {t, t};
  std::vector<std::string> codes;
  for (const Trouble& trouble : plan_troubles(p)) {
    EXPECT_FALSE(trouble.value.empty() || trouble.bound.empty() || trouble.advice.empty());
    codes.push_back(trouble.code);
  }
  EXPECT_EQ(std::count(codes.begin(), codes.end(), "record_out_of_bounds"), 4);
  EXPECT_EQ(std::count(codes.begin(), codes.end(), "no_moment"), 1);
  EXPECT_EQ(std::count(codes.begin(), codes.end(), "as_built_twice"), 1);
}

}  // namespace
}  // namespace underlawn
