// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/test_verdict.h"

#include <random>

#include "flow/test_procedure.h"

namespace underlawn {
namespace {

const LoopVolume kLoop = {{{"pipe", 0.0215, 0.0267, 11, 900}, {"header", 0.034, 0.0422, 11, 60}}};

// A log read every five minutes from a loop in `truth`, to a fifth of a psi.
std::vector<PressureReading> log_of(const TestProgramme& programme, const LoopState& truth,
                                    std::mt19937* random = nullptr) {
  const TestCurve curve = test_curve(programme, kLoop, truth).value();
  const double start = shut_in_start(programme), span = programme_end(programme) - start;
  std::uniform_real_distribution<double> error(-0.2 * kPsi, 0.2 * kPsi);
  std::vector<PressureReading> readings;
  for (double t = 0; t <= span; t += 300)
    readings.push_back({t, curve.pressure_at(start + t) + (random && t > 0 ? error(*random) : 0), {}});
  return readings;
}

Judgement judge(const TestProgramme& programme, const std::vector<PressureReading>& readings,
                std::optional<double> pumped = {}) {
  return judge_test(programme, kLoop, {}, {}, readings, pumped, UnitSystem::metric).value();
}

LoopState with_leak(double litres_per_hour) {
  LoopState state;
  state.leak = litres_per_hour / 3.6e6;
  state.leak_pressure = 600e3;
  return state;
}

}  // namespace

TEST(TestVerdict, ASoundLoopIsSoundByEveryProcedure) {
  for (const TestProgramme& p : {pump_then_shut_in(600e3), hold_then_shut_in(600e3),
                                 long_hold_then_shut_in(600e3), rebound_test(600e3)}) {
    const Judgement j = judge(p, log_of(p, {}));
    EXPECT_EQ(j.verdict, Verdict::sound) << p.name << ": " << j.reason;
    EXPECT_GT(j.smallest_visible, 0);
    EXPECT_THAT(j.reason, testing::HasSubstr("would not have shown"));
  }
}

TEST(TestVerdict, ALeakIsSuspectedAndItsSizeFound) {
  const TestProgramme p = long_hold_then_shut_in(600e3);
  const Judgement j = judge(p, log_of(p, with_leak(1.0)));
  ASSERT_EQ(j.verdict, Verdict::leak_suspected) << j.reason;
  EXPECT_NEAR(j.leak * 3.6e6, 1.0, 0.02);
  EXPECT_LT(j.leak_least * 3.6e6, 1.0);
  EXPECT_GT(j.leak_most * 3.6e6, 1.0);
  EXPECT_GT(j.leak_least, 0);
  EXPECT_THAT(j.next, testing::HasSubstr("slowly"));
}

// Seed 4. Loops anywhere within the bounds: no sound one is condemned; leaks of three times the smallest
// visible one are all seen and lie in the range told.
TEST(TestVerdict, HoldsForLoopsAnywhereWithinTheBounds) {
  std::mt19937 random(4);
  std::uniform_real_distribution<double> u(-0.9, 0.9);
  const TestProgramme p = long_hold_then_shut_in(600e3);
  const double seen = judge(p, log_of(p, {})).smallest_visible;
  for (int i = 0; i < 40; ++i) {
    LoopState truth;
    truth.creep.modulus_one_hour *= 1 + 0.2 * u(random);
    truth.creep.exponent *= 1 + 0.2 * u(random);
    truth.air = 0.0025 * (1 + u(random));
    truth.temperature = {{0, 15}, {shut_in_start(p), 15}, {programme_end(p), 15 + u(random)}};
    const bool leaks = i % 2 == 1;
    if (leaks) truth.leak = 3 * seen, truth.leak_pressure = 600e3;
    const Judgement j = judge(p, log_of(p, truth, &random));
    EXPECT_EQ(j.verdict, leaks ? Verdict::leak_suspected : Verdict::sound) << i << j.reason;
    EXPECT_LE(j.leak_least, truth.leak) << i;
    EXPECT_GE(j.leak_most, truth.leak) << i;
  }
}

TEST(TestVerdict, CannotTellFromTooLittle) {
  const TestProgramme p = hold_then_shut_in(600e3);
  auto readings = log_of(p, {});
  const auto full = readings;
  readings.resize(4);
  EXPECT_THAT(judge(p, readings).reason, testing::HasSubstr("Only 4 readings"));
  std::vector<PressureReading> brief;
  for (double t = 0; t < 600; t += 60) brief.push_back({t, 600e3, {}});
  EXPECT_THAT(judge(p, brief).reason, testing::HasSubstr("cover"));
  std::vector<PressureReading> late(full.begin() + 1, full.end());
  EXPECT_THAT(judge(p, late).reason, testing::HasSubstr("first reading"));
  EXPECT_EQ(judge(p, brief).verdict, Verdict::cannot_tell);
}

TEST(TestVerdict, CannotTellAtAnotherPressureOrWhenItRises) {
  const TestProgramme p = hold_then_shut_in(600e3);
  const Judgement other = judge(p, log_of(hold_then_shut_in(400e3), {}));
  EXPECT_EQ(other.verdict, Verdict::cannot_tell);
  EXPECT_THAT(other.reason, testing::HasSubstr("400"));
  LoopState cooling;
  cooling.temperature = {{1860, 15}, {3660, 12}};
  EXPECT_THAT(judge(p, log_of(p, cooling)).reason, testing::HasSubstr("cooled"));
}

TEST(TestVerdict, AMeasuredTemperatureExplainsAFallOrForbidsAVerdict) {
  const TestProgramme p = long_hold_then_shut_in(600e3);
  const auto warmed = [&](double kelvin) {
    LoopState state;
    const double start = shut_in_start(p), end = programme_end(p);
    state.temperature = {{0, 15}, {start, 15}, {end, 15 + kelvin}};
    auto readings = log_of(p, state);
    for (PressureReading& r : readings) r.temperature = 15 + kelvin * r.time / (end - start);
    return readings;
  };
  auto unmeasured = warmed(1.8);
  for (PressureReading& r : unmeasured) r.temperature.reset();
  EXPECT_EQ(judge(p, unmeasured).verdict, Verdict::leak_suspected);  // looks like one
  EXPECT_EQ(judge(p, warmed(1.8)).verdict, Verdict::sound);
  EXPECT_LT(judge(p, warmed(1.8)).smallest_visible, 0.5 * judge(p, unmeasured).smallest_visible);
  EXPECT_EQ(judge(p, warmed(2.5)).verdict, Verdict::cannot_tell);
}

TEST(TestVerdict, AirIsSeenByTheWaterPumped) {
  const TestProgramme p = hold_then_shut_in(600e3);
  LoopState airy;
  airy.air = 0.02;
  const double pumped = test_curve(p, kLoop, airy).value().added_at(kPumpUp);
  const Judgement j = judge(p, log_of(p, airy), pumped);
  EXPECT_EQ(j.verdict, Verdict::cannot_tell);
  EXPECT_NEAR(j.air.value(), 0.02, 1e-6);
  EXPECT_THAT(j.next, testing::HasSubstr("purge"));
  const double clean = test_curve(p, kLoop, {}).value().added_at(kPumpUp);
  EXPECT_EQ(judge(p, log_of(p, {}), clean).verdict, Verdict::sound);
}

TEST(TestVerdict, TheStandardsOwnRuleIsFivePercentEitherWay) {
  std::vector<PressureReading> readings = {{0, 500e3, {}}, {600, 524e3, {}}, {3600, 476e3, {}}};
  EXPECT_TRUE(within_rebound_tolerance(readings));
  readings[2].pressure = 474e3;
  EXPECT_FALSE(within_rebound_tolerance(readings));
  EXPECT_FALSE(within_rebound_tolerance({}));
}

// Seed 6. Odd loops, states and logs are judged or refused, never more.
TEST(TestVerdict, OddInputIsJudgedOrRefused) {
  std::mt19937 random(6);
  const double odd[] = {0, 1, -1, 0.005, 0.3, 15, 59, 1e3, 6e5, 1e7, 1e12, NAN, INFINITY};
  const auto any = [&] { return odd[random() % std::size(odd)]; };
  const auto spoil = [&](double& value) {
    if (random() % 12 == 0) value = any();
  };
  int judged = 0, refused = 0;
  for (int i = 0; i < 100; ++i) {
    TestProgramme p = hold_then_shut_in(600e3);
    LoopVolume loop = kLoop;
    LoopState state;
    TestBounds bounds;
    auto readings = log_of(p, {});
    for (TestPhase& phase : p.phases) spoil(phase.duration), spoil(phase.pressure);
    spoil(loop.pipes[0].length), spoil(loop.pipes[1].dr), spoil(state.creep.modulus_one_hour);
    spoil(state.air), spoil(state.temperature[0].temperature), spoil(bounds.most_air), spoil(bounds.gauge);
    spoil(readings[3].pressure), spoil(readings[0].pressure), spoil(readings.back().time);
    const auto j = judge_test(p, loop, state, bounds, readings, {}, UnitSystem::us);
    (j ? judged : refused) += 1;
    EXPECT_FALSE(j ? j->reason.empty() || j->next.empty() : j.error().advice.empty());
  }
  EXPECT_GT(judged, 15);
  EXPECT_GT(refused, 15);
}

TEST(TestVerdict, LeaksAreWrittenInTwoFigures) {
  EXPECT_EQ(leak_text(0.2643 / 3.6e6, UnitSystem::metric), "0.26 L/h");
  EXPECT_EQ(leak_text(12.3 / 3.6e6, UnitSystem::metric), "12 L/h");
  EXPECT_EQ(leak_text(0.2643 / 3.6e6, UnitSystem::us), "0.070 gal/h");
  EXPECT_EQ(leak_text(0, UnitSystem::us), "0 gal/h");
}

}  // namespace underlawn
