// SPDX-License-Identifier: GPL-3.0-or-later
// The checks that judge the order of digging: each where it speaks and where it does not.
#include <gtest/gtest.h>

#include <cmath>

#include "dig/dig_order.h"
#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using crafted::keys;

struct Dug {
  Plan plan = crafted::plan();
  Outcome outcome;

  explicit Dug(double spacing, int trenches = 3) {
    std::vector<Trench> all;
    for (int i = 0; i < trenches; ++i)
      all.push_back(crafted::trench(i + 1, {30, 40 + spacing * i}, {60, 40 + spacing * i}));
    outcome = crafted::outcome(plan, all);
    solve();
  }
  void solve() {
    outcome.order = std::make_shared<DigOrder>(
        make_dig_order(plan.site, outcome.layout, outcome.dig, plan.wishes, plan.ground, plan.dig));
  }
  DigOrder& order() { return const_cast<DigOrder&>(*outcome.order); }
};

}  // namespace

TEST(SpoilOverUndug, MeasuresWhatLiesOnAnUndugTrench) {
  Dug d(9);
  EXPECT_TRUE(checks::spoil_over_undug(d.plan, d.outcome).empty());
  const auto last = d.order().steps.size() - 1;
  const Point at = d.order().steps[last].line.front();
  d.order().steps[0].spoil = {
      {{at.x - 5, at.y - 5}, {at.x + 5, at.y - 5}, {at.x + 5, at.y + 5}, {at.x - 5, at.y + 5}}};
  const auto found = checks::spoil_over_undug(d.plan, d.outcome);
  ASSERT_FALSE(found.empty());
  EXPECT_EQ(found[0].severity, Severity::error);
  EXPECT_GT(found[0].measured, 1);
}

TEST(SpoilLiesOn, NamesTreeHouseAndLineWithTheArea) {
  Dug d(9, 1);
  EXPECT_TRUE(checks::spoil_lies_on(d.plan, d.outcome).empty());
  // A root zone is 18 trunk diameters in radius: 5.4 m of 0.3 m.
  d.plan.site.features.push_back(crafted::feature(7, FeatureKind::tree, {{45, 60}}));
  d.plan.site.features.push_back(crafted::feature(8, FeatureKind::utility, {{20, 70}, {80, 70}}));
  for (DigStep& step : d.order().steps) step.spoil.clear();
  const Ring on_roots = {{44, 59}, {46, 59}, {46, 61}, {44, 61}},
             on_line = {{30, 69}, {34, 69}, {34, 71}, {30, 71}},
             at_wall = {{42, 20}, {46, 20}, {46, 22}, {42, 22}};
  d.order().steps[0].spoil = {on_roots, on_line, at_wall};
  const auto found = checks::spoil_lies_on(d.plan, d.outcome);
  ASSERT_EQ(keys(found),
            (Keys{"spoil_lies_on/feature-1", "spoil_lies_on/feature-7", "spoil_lies_on/feature-8"}));
  EXPECT_NEAR(found[0].measured, 4 * 0.6, 0.02);  // 0.6 m off the wall
  EXPECT_NEAR(found[1].measured, 4, 1e-6);
  EXPECT_NEAR(found[2].measured, 4 * 2 * 0.4572, 1e-3);  // 18 in each side
  // 4 of the heap's 4 + 8 + 8 m2 lie on roots: a fifth of it goes off and comes back, 6 m3 a trip of 40
  // minutes.
  const double loose = d.order().steps[0].work.loose / 5;
  const double money = 2 * loose / 6 * 40 / 60 * 90;
  EXPECT_NE(found[1].advice.find(print_quantity(Quantity::volume, loose, d.plan.units)), std::string::npos)
      << found[1].advice;
  EXPECT_NE(found[1].advice.find(std::to_string(10 * std::lround(money / 10))), std::string::npos)
      << found[1].advice;
}

// A tree whose roots reach beside one end of the trench, on either side: the heap is laid along the rest.
TEST(SpoilLiesOn, HeapsGiveWayToRootsWhereThereIsRoom) {
  Dug d(9, 1);
  d.plan.site.features.push_back(crafted::feature(7, FeatureKind::tree, {{61, 40}}));
  d.solve();
  for (const DigStep& step : d.outcome.order->steps)
    if (step.kind == DigKind::trench) {
      EXPECT_FALSE(step.spoil.empty());
      for (const Ring& ring : step.spoil) EXPECT_GE(distance(ring, {61, 40}), 18 * 0.3 - 0.01);
    }
}

TEST(WayOverUtility, CountsThePlacesWhereTheMachineCrosses) {
  Dug d(9);
  d.plan.dig.access = Point{0, 50};
  d.solve();
  EXPECT_TRUE(checks::way_over_utility(d.plan, d.outcome).empty());
  d.plan.site.features.push_back(crafted::feature(7, FeatureKind::utility, {{5, 5}, {5, 95}}));
  const auto found = checks::way_over_utility(d.plan, d.outcome);
  ASSERT_EQ(keys(found), Keys{"way_over_utility/machine"});
  EXPECT_GE(found[0].measured, 2) << "in and out again";
  EXPECT_NE(found[0].advice.find("before you dig"), std::string::npos);
  // Trucks alone over a line are not called the machine.
  auto order = std::make_shared<DigOrder>(*d.outcome.order);
  order->way_out.clear();
  for (DigStep& step : order->steps) step.way.clear();
  order->steps.front().truck_way = {{0, 50}, {10, 50}};
  d.outcome.order = order;
  const auto trucks = checks::way_over_utility(d.plan, d.outcome);
  ASSERT_EQ(keys(trucks), Keys{"way_over_utility/trucks"});
  EXPECT_NE(trucks[0].title.find("truck"), std::string::npos);
}

namespace {

// m2 of a strip of this half width, `off` from the middle of a disc, that lie in it.
double strip_in_disc(double radius, double off, double half) {
  double sum = 0;
  constexpr int kSlices = 20'000;
  for (int i = 0; i < kSlices; ++i) {
    const double y = off - half + 2 * half * (i + 0.5) / kSlices;
    if (std::abs(y) < radius) sum += 2 * std::sqrt(radius * radius - y * y) * 2 * half / kSlices;
  }
  return sum;
}

}  // namespace

// A trunk of 0.3 m: its roots reach 18 times as far, 5.4 m. The ways pass it 3 m off.
TEST(WayOverRoots, MeasuresWhatIsDrivenOnAndSaysByWhom) {
  Dug d(9);
  d.plan.site.features.push_back(crafted::feature(7, FeatureKind::tree, {{20, 53}}));
  auto order = std::make_shared<DigOrder>(*d.outcome.order);
  order->way_out.clear();
  for (DigStep& step : order->steps) step.way.clear();
  d.outcome.order = order;
  EXPECT_TRUE(checks::way_over_roots(d.plan, d.outcome).empty());
  order->steps.front().truck_way = {{0, 50}, {40, 50}};
  auto found = checks::way_over_roots(d.plan, d.outcome);
  ASSERT_EQ(keys(found), Keys{"way_over_roots/feature-7"});
  const double wide = strip_in_disc(5.4, 3, 2.591 / 2);
  EXPECT_NEAR(found[0].measured, wide, 0.02 * wide);
  EXPECT_EQ(found[0].title.find("Trucks"), 0u);
  EXPECT_NE(found[0].advice.find("1.70 m"), std::string::npos) << found[0].advice;  // 3 m - 2.591 m/2
  order->way_out = {{40, 50}, {0, 50}};  // narrower, on the same ground
  found = checks::way_over_roots(d.plan, d.outcome);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0].measured, wide, 0.02 * wide);
  EXPECT_EQ(found[0].title.find("Machine and trucks"), 0u);
  order->steps.front().truck_way.clear();
  found = checks::way_over_roots(d.plan, d.outcome);
  ASSERT_EQ(found.size(), 1u);
  const double narrow = strip_in_disc(5.4, 3, d.plan.dig.excavator.width / 2);
  EXPECT_NEAR(found[0].measured, narrow, 0.02 * narrow);
  order->way_out = {{40, 45}, {0, 45}};  // 8 m off
  EXPECT_TRUE(checks::way_over_roots(d.plan, d.outcome).empty());
}

// A truck of 2.591 m passes a tank with its middle 2 m off: 2 m - 2.591 m/2 = 0.7045 m are left.
TEST(WayTight, SaysWhatIsLeftBesideWheels) {
  Dug d(9);
  d.plan.site.features.push_back(
      crafted::feature(7, FeatureKind::septic_tank, {{20, 52}, {22, 52}, {22, 54}, {20, 54}}));
  auto order = std::make_shared<DigOrder>(*d.outcome.order);
  order->way_out.clear();
  for (DigStep& step : order->steps) step.way.clear();
  d.outcome.order = order;
  EXPECT_TRUE(checks::way_tight(d.plan, d.outcome).empty());
  order->steps.front().fill_way = {{0, 50}, {40, 50}};
  auto found = checks::way_tight(d.plan, d.outcome);
  ASSERT_EQ(keys(found), Keys{"way_tight/feature-7"});
  EXPECT_NEAR(found[0].measured, 0.7045, 1e-6);
  EXPECT_EQ(found[0].severity, Severity::warning);
  EXPECT_EQ(found[0].title.find("Trucks"), 0u);
  order->way_out = {{40, 50.5}, {0, 50.5}};  // the machine nearer still
  found = checks::way_tight(d.plan, d.outcome);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0].measured, std::min(0.7045, 1.5 - d.plan.dig.excavator.width / 2), 1e-6);
  EXPECT_EQ(found[0].title.find("Machine and trucks"), 0u);
  order->way_out.clear();
  order->steps.front().fill_way = {{0, 49}, {40, 49}};  // 1.7045 m
  EXPECT_TRUE(checks::way_tight(d.plan, d.outcome).empty());
  d.plan.site.features.back().kind = FeatureKind::house;  // asks less
  order->steps.front().fill_way = {{0, 50}, {40, 50}};
  EXPECT_TRUE(checks::way_tight(d.plan, d.outcome).empty());
}

// A mark of paint under the edge of a heap is 0.1 m2; over water that is a speck, over gas it is said.
TEST(SpoilLiesOn, SpeaksOfTheLeastOverGasAndElectricLines) {
  Dug d(9);
  d.plan.site.features.push_back(crafted::feature(7, FeatureKind::utility, {{2, 5}, {2, 95}}));
  auto order = std::make_shared<DigOrder>(*d.outcome.order);
  for (DigStep& step : order->steps) step.spoil.clear();
  order->steps.front().spoil = {{{2.3572, 50}, {4, 50}, {4, 51}, {2.3572, 51}}};  // 0.1 m into 0.4572 m
  d.outcome.order = order;
  d.plan.site.features.back().utility = UtilityKind::water;
  EXPECT_TRUE(checks::spoil_lies_on(d.plan, d.outcome).empty());
  for (const UtilityKind kind : {UtilityKind::gas, UtilityKind::electric}) {
    d.plan.site.features.back().utility = kind;
    const auto found = checks::spoil_lies_on(d.plan, d.outcome);
    ASSERT_EQ(keys(found), Keys{"spoil_lies_on/feature-7"});
    EXPECT_NEAR(found[0].measured, 0.1, 0.01);
    EXPECT_NE(found[0].advice.find("keeps the marks in sight"), std::string::npos) << found[0].advice;
  }
}

TEST(FilledBeforeTest, SpeaksOfCloseTrenchesOnly) {
  Dug close(3.6), wide(9);
  EXPECT_EQ(keys(checks::filled_before_test(close.plan, close.outcome)), Keys{"filled_before_test/trenches"});
  EXPECT_TRUE(checks::filled_before_test(wide.plan, wide.outcome).empty());
}

TEST(SpoilRoom, FollowsTheOrderWhereThereIsOne) {
  Dug d(3.6);
  EXPECT_TRUE(checks::spoil_room(d.plan, d.outcome).empty());
  d.order().steps[1].no_room = "the lot line";
  d.order().steps[1].hauled = true;
  const auto found = checks::spoil_room(d.plan, d.outcome);
  ASSERT_EQ(keys(found), Keys{"spoil_room/trenches"});
  EXPECT_NE(found[0].advice.find("the lot line"), std::string::npos);
}

TEST(MachineReach, NamesWhatTheMachineCannotDo) {
  Dug d(9);
  d.plan.dig.access = Point{0, 50};
  d.solve();
  EXPECT_EQ(keys(checks::machine_reach(d.plan, d.outcome)), Keys{});
  d.plan.dig.excavator.depth = 1.3;
  d.solve();
  EXPECT_EQ(keys(checks::machine_reach(d.plan, d.outcome)), Keys{"machine_reach/depth"});
  d.plan.dig.excavator.depth = 3;
  d.plan.dig.excavator.reach = 2;
  d.solve();
  // With so short a reach it finds no place to stand clear of its trench either.
  EXPECT_EQ(keys(checks::machine_reach(d.plan, d.outcome)),
            (Keys{"machine_reach/way", "machine_reach/cast"}));
  d.plan.dig.excavator.reach = 5.8;
  d.plan.dig.access.reset();
  d.solve();
  EXPECT_EQ(keys(checks::machine_reach(d.plan, d.outcome)), Keys{"machine_reach/access"});
}

TEST(SidesChosen, AsksTheSlopeOfTheTable) {
  Dug d(30, 1);
  d.plan.ground.soil = SoilType::type_b;
  d.plan.wishes.trench_depth = d.outcome.layout.trenches[0].depth = 1.8;
  d.plan.dig.coil_sides = Sides::slope;
  d.plan.dig.slope = 0.8;
  const auto dig = [&] {
    d.outcome.dig = make_dig(d.outcome.layout, d.plan.wishes, d.plan.ground, {}, d.plan.dig);
    d.solve();
    return checks::sides_chosen(d.plan, d.outcome);
  };
  const auto found = dig();
  ASSERT_EQ(keys(found), Keys{"sides_chosen/slope"});
  EXPECT_DOUBLE_EQ(found[0].measured, 0.8);
  EXPECT_DOUBLE_EQ(found[0].required, 1);
  d.plan.dig.slope = 1;
  EXPECT_TRUE(dig().empty());
  d.plan.dig.spoil_off = 0.3;
  EXPECT_EQ(keys(dig()), Keys{"sides_chosen/spoil"});
}

TEST(SidesChosen, SaysWhereJointsCannotBeMade) {
  Dug d(9);
  d.plan.ground.soil = SoilType::type_c;
  d.plan.wishes.run_depth = 1.6;
  EXPECT_TRUE(checks::sides_chosen(d.plan, d.outcome).empty());
  d.plan.dig.run_sides = Sides::stay_out;
  EXPECT_EQ(keys(checks::sides_chosen(d.plan, d.outcome)), Keys{"sides_chosen/run"});
}

}  // namespace underlawn
