// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/hydraulics.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "flow/flow_remarks.h"
#include "plan/solve.h"
#include "support/flow_layouts.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

bool remarks(const Flow& f, const FlowWishes& w, const std::string& code) {
  const auto all = flow_remarks(f, w, UnitSystem::metric);
  return std::any_of(all.begin(), all.end(), [&](const Trouble& t) { return t.code == code; });
}

// H = 10 - 8000 q: straight, so the duty point with h = a q^2 is a quadratic's root.
const Circulator kStraight{"straight", {{0, 10, 100}, {5e-4, 6, 150}, {1e-3, 2, 200}}};

FlowWishes typed() {
  FlowWishes w;
  w.run_size = "1-1/4 in DR 11";
  w.header_sizes = {"1-1/4 in DR 11"};
  return w;
}

}  // namespace

TEST(DutyPoint, IsTheRootOfPumpLessPipes) {
  const double a = 2e7;
  const DutyPoint duty = duty_point(kStraight, [a](double q) { return a * q * q; }).value();
  const double by_hand = (-8000 + std::sqrt(8000.0 * 8000 + 4 * a * 10)) / (2 * a);
  EXPECT_NEAR(duty.flow, by_hand, 1e-9 * by_hand);
  EXPECT_NEAR(duty.head, a * by_hand * by_hand, 1e-8);
  EXPECT_NEAR(duty.power, 100 + 1e5 * by_hand, 1e-6);
  EXPECT_FALSE(duty_point({}, [](double) { return 1.0; }));
  EXPECT_EQ(duty_point(kStraight, [](double) { return 11.0; }).error().code, "pump_too_weak");
}

// Against pipes whose head goes with the flow squared the affinity laws are exact: flow as the speed, power
// as its cube.
TEST(DutyPoint, SlowerPumpFollowsTheAffinityLaws) {
  const SystemCurve system = [](double q) { return 2e7 * q * q; };
  const DutyPoint duty = duty_point(kStraight, system).value();
  for (double part : {0.9, 0.5, 0.3}) {
    const SpeedPoint slow = speed_for(kStraight, system, part * duty.flow).value();
    EXPECT_NEAR(slow.speed, part, 1e-7);
    EXPECT_NEAR(slow.power, std::pow(part, 3) * duty.power, 1e-5 * duty.power);
  }
  EXPECT_FALSE(speed_for(kStraight, system, 1.01 * duty.flow));
}

TEST(PumpGrade, StepsAtThePublishedHorsepower) {
  const double kW100Tons = 100 * 3516.853;  // W
  EXPECT_EQ(pump_grade(4.9 * 745.7, kW100Tons), "excellent");
  EXPECT_EQ(pump_grade(7 * 745.7, kW100Tons), "good");
  EXPECT_EQ(pump_grade(9 * 745.7, kW100Tons), "mediocre");
  EXPECT_EQ(pump_grade(14 * 745.7, kW100Tons), "poor");
  EXPECT_EQ(pump_grade(16 * 745.7, kW100Tons), "bad");
}

TEST(Hydraulics, TheDutyPointIsOnBothCurves) {
  const FlowWishes w = typed();
  const Flow f = solve_flow(hand_layout(0, 4, true), {}, w).value();
  ASSERT_TRUE(f.pump);
  const auto pipes = solve_network(f.loop.network, f.design.fluid, f.pump->duty.flow).value();
  EXPECT_NEAR(pipes.head_loss, f.pump->duty.head, 1e-6);
  EXPECT_NEAR(pump_head(w.circulator, f.pump->duty.flow), f.pump->duty.head, 1e-9);
  ASSERT_TRUE(f.coldest_pump);
  EXPECT_LT(f.coldest_pump->duty.flow, f.pump->duty.flow) << "thicker liquid, less flow";
  ASSERT_EQ(f.pump->slower.size(), 3u);
  EXPECT_LT(f.pump->slower[2].power, f.pump->slower[0].power / 3);
}

TEST(Hydraulics, ColdLiquidTakesMoreHeadAndLessHeat) {
  const Flow f = solve_flow(hand_layout(0, 4, true), {}, typed()).value();
  EXPECT_GT(f.coldest.flow.head_loss, f.design.flow.head_loss);
  EXPECT_LT(f.coldest.flow.pipes[1].reynolds, f.design.flow.pipes[1].reynolds);
  const std::size_t coil_pipe = f.loop.circuits[0];
  EXPECT_GE(f.coldest.resistance[coil_pipe], f.design.resistance[coil_pipe]);
  // The wall alone, average bore: ln(do/di)/(2 pi k).
  const PipeSize coil = *find_pipe("3/4 in DR 11");
  const double wall = std::log(coil.outside_diameter / coil.average_bore()) /
                      (2 * 3.14159265358979 * kPolyethyleneConductivity);
  EXPECT_GT(f.design.resistance[coil_pipe], wall);
}

TEST(Hydraulics, SaysWhatWouldBalanceTheCircuits) {
  FlowWishes w = typed();
  w.design_flow = 2e-3;
  const Flow f = solve_flow(hand_layout(0, 12, false, 4, 20, 100), {}, w).value();
  ASSERT_GT(f.design.imbalance, 0.1);
  EXPECT_TRUE(remarks(f, w, "flow_imbalance"));
  ASSERT_EQ(f.remedies.size(), 3u);
  EXPECT_LT(f.remedies[0].imbalance, f.design.imbalance);
  for (const Remedy& r : f.remedies)
    if (r.what == "coils of one length") {
      EXPECT_NEAR(r.imbalance, f.design.imbalance, 1e-9) << "they are of one length already";
    }
  w.most_imbalance = 0.99;
  EXPECT_TRUE(solve_flow(hand_layout(0, 12, false, 4, 20, 100), {}, w)->remedies.empty());
}

TEST(Hydraulics, SaysThatTheMixtureIsTooThin) {
  FlowWishes w = typed();
  w.mass_fraction = 0.15;  // freezes at -4.9 C
  const Flow f = solve_flow(hand_layout(0, 4, true), {}, w).value();
  EXPECT_TRUE(remarks(f, w, "flow_freezes"));
  ASSERT_TRUE(f.antifreeze.recommended);
  w.mass_fraction = *f.antifreeze.recommended + 1e-6;
  EXPECT_FALSE(remarks(*solve_flow(hand_layout(0, 4, true), {}, w), w, "flow_freezes"));
}

TEST(Hydraulics, VolumeIsThatOfThePipesBores) {
  const Flow f = solve_flow(hand_layout(2, 4, true), {}, typed()).value();
  EXPECT_NEAR(f.volume, loop_volume(volume_of(f.loop)), 1e-12);
}

TEST(Hydraulics, RefusesWhatTheWishesRefuse) {
  FlowWishes w = typed();
  w.fluid = Fluid::water;
  EXPECT_EQ(solve_flow(hand_layout(0, 4, true), {}, w).error().code, "fluid_temperature");
  EXPECT_EQ(solve_flow({}, {}, typed()).error().code, "flow_no_circuits");
}

TEST(Hydraulics, SizesLeftOpenAreDesigned) {
  FlowWishes w;
  const Flow f = solve_flow(hand_layout(0, 4, true), {}, w).value();
  ASSERT_TRUE(f.header);
  EXPECT_EQ(f.sizes.run.name, f.header->sizes.run.name);
  EXPECT_NEAR(f.design.imbalance, f.header->imbalance, 1e-9);
  EXPECT_TRUE(f.header->holds());
  EXPECT_FALSE(solve_flow(hand_layout(0, 4, true), {}, typed())->header);
  w.most_head = 0.5;
  EXPECT_TRUE(remarks(solve_flow(hand_layout(0, 4, true), {}, w).value(), w, "flow_head"));
}

TEST(Hydraulics, ACirculatorAskedForMoreThanItCanMoveHoldsNoHead) {
  FlowWishes w;
  w.design_flow = 1.2 * w.circulator.curve.back().flow;
  ASSERT_EQ(pump_head(w.circulator, w.design_flow), 0);
  const Flow f = solve_flow(hand_layout(0, 4, true), {}, w).value();
  ASSERT_TRUE(f.header);
  EXPECT_FALSE(f.header->head_holds);
  EXPECT_TRUE(remarks(f, w, "flow_head"));
}

TEST(Hydraulics, RemarksAreInTheUnitsOfWhoReadsThem) {
  FlowWishes w = typed();
  w.mass_fraction = 0.15;
  const Flow f = solve_flow(hand_layout(0, 4, true), {}, w).value();
  const auto of = [&](UnitSystem units) {
    std::string all;
    for (const Trouble& t : flow_remarks(f, w, units)) all += t.message();
    return all;
  };
  EXPECT_NE(of(UnitSystem::us).find("°F"), std::string::npos);
  EXPECT_EQ(of(UnitSystem::us).find("°C"), std::string::npos);
  EXPECT_NE(of(UnitSystem::metric).find("°C"), std::string::npos);
}

TEST(Hydraulics, ADesignedHeaderWasFlushedAsTheLoopIs) {
  const FlowWishes w;
  const Flow f = solve_flow(hand_layout(0, 4, true), {}, w).value();
  ASSERT_TRUE(f.header);
  const Purge again = purge_loop(f.loop, w).value();
  EXPECT_DOUBLE_EQ(f.header->flushing.together.flow, again.together.flow);
  EXPECT_DOUBLE_EQ(f.header->flushing.together.head, again.together.head);
  EXPECT_EQ(f.header->flushing.together.slowest, again.together.slowest);
}

TEST(Hydraulics, LayoutsOfThePlacerHangTogether) {
  int laid = 0;
  for (int circuits = 1; circuits <= 6; ++circuits)
    for (double length : {12.0, 20.0, 30.48}) {
      Plan plan = sample::half_acre();
      plan.wishes.circuits = circuits;
      plan.wishes.trench_length = length;
      plan.wishes.coil_length = 8 * length;
      const Layout layout = solve(plan).layout;
      if (layout.trenches.empty() || layout.run.line.empty()) continue;
      ++laid;
      for (auto a : {HeaderArrangement::direct_return, HeaderArrangement::reverse_return,
                     HeaderArrangement::home_runs}) {
        FlowWishes w;
        w.arrangement = a;
        const auto f = solve_flow(layout, plan.wishes, w);
        ASSERT_TRUE(f) << f.error().message();
        EXPECT_EQ(f->loop.circuits.size(), layout.trenches.size());
        EXPECT_LT(f->design.flow.residual, 1e-9);
      }
    }
  EXPECT_GE(laid, 10);
}
