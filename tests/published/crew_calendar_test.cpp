// SPDX-License-Identifier: GPL-3.0-or-later
// The calendar's shop against worked examples of Johnson's rule, and against facts of the trade.
#include "cost/crew_calendar.h"

#include "cost/crew_shop.h"
#include "plan/solve.h"

namespace underlawn {
namespace {

constexpr double kFoot = 0.3048;

// Digging and laying take the times given, coils are made, nothing else is dug.
ShopRun shop(const std::vector<std::pair<double, double>>& times) {
  Layout layout;
  DigOrder order;
  CrewWishes crew;
  DigWishes how;
  Ground ground;
  ground.swell = 0;
  how.excavator.bucket = how.excavator.fill = how.excavator.efficiency = how.excavator.cycle = 1;
  crew.coil_laying = 1;
  crew.coils_ready = static_cast<int>(times.size());
  for (const auto& [dig, lay] : times) {
    Trench t;
    t.number = static_cast<int>(layout.trenches.size()) + 1;
    layout.trenches.push_back(t);
    DigStep step;
    step.trench = t.number;
    step.line = {{0, 0}, {1, 0}};
    step.work.bank = dig;
    step.work.length = lay;
    order.steps.push_back(step);
  }
  return run_shop({Site{}, layout, order, ground, how, crew, 0, 0});
}

double idle(const ShopRun& run, CrewStation station) {
  double sum = 0, until = 0;
  for (const CrewTask& t : run.tasks) {
    if (t.station != station) continue;
    sum += t.begin - until;
    until = t.end;
  }
  return sum;
}

}  // namespace

// A(5,2) B(1,6) C(9,7) D(3,8) E(10,4) in Johnson's order B D C E A: 30, the second machine idle 3.
TEST(CrewCalendarPublished, FiveJobsTakeThirty) {
  const ShopRun run = shop({{1, 6}, {3, 8}, {9, 7}, {10, 4}, {5, 2}});
  EXPECT_NEAR(run.laid, 30, 1e-9);
  EXPECT_NEAR(idle(run, CrewStation::laying), 3, 1e-9);
}

// L(10,2) M(5,4) N(7,5) O(3,6) P(1,7) as P O N M L: 28. A(3,8) B(12,10) C(5,9) D(2,6) E(9,3) F(11,1) as
// D A C B E F: 43. (Printed answers worked again by hand.)
TEST(CrewCalendarPublished, OtherJobsTakeTwentyEightAndFortyThree) {
  EXPECT_NEAR(shop({{1, 7}, {3, 6}, {7, 5}, {5, 4}, {10, 2}}).laid, 28, 1e-9);
  EXPECT_NEAR(shop({{2, 6}, {3, 8}, {5, 9}, {12, 10}, {9, 3}, {11, 1}}).laid, 43, 1e-9);
}

// Makespan of n equal jobs is first + second + (n - 1) x the longer: plain counting.
TEST(CrewCalendarPublished, EqualJobsFollowTheSlowerStation) {
  for (const auto& [first, second] : {std::pair{3.0, 2.0}, {2.0, 3.0}, {4.0, 4.0}})
    for (std::size_t n : {1u, 2u, 7u})
      EXPECT_NEAR(shop(std::vector<std::pair<double, double>>(n, {first, second})).laid,
                  first + second + static_cast<double>(n - 1) * std::max(first, second), 1e-9);
}

// Four coil trenches of 100 ft by 3 ft by 6 ft and the run to the house are two days' digging, and a coil is
// made in about the time its trench is dug: common practice, no source. An ordinary lot, solved whole, with
// the usual crew: digging takes two days by the machine's hours and by the calendar.
TEST(CrewCalendarPublished, AnOrdinaryLoopIsTwoDaysDigging) {
  Plan plan;
  for (Point p : {Point{0, 0}, Point{60, 0}, Point{60, 90}, Point{0, 90}}) plan.site.lot.push_back({p, 0});
  Feature house;
  house.id = 1;
  house.kind = FeatureKind::house;
  house.points = {{20, 8}, {34, 8}, {34, 20}, {20, 20}};
  plan.site.features = {house};
  plan.site.entry = EntryPoint{1, {27, 20}};
  const Outcome outcome = solve(plan);
  ASSERT_EQ(outcome.layout.trenches.size(), 4u);
  EXPECT_NEAR(length_of(outcome.layout.trenches[0]) / kFoot, 100, 1);
  ASSERT_NE(outcome.calendar, nullptr);
  const CrewCalendar& c = *outcome.calendar;
  const CrewTime t = times_of(c);
  EXPECT_NEAR(days_of(t.digging), 2, 0.25);
  EXPECT_NEAR(days_of(c.dug), 2, 0.35);
  EXPECT_NEAR(t.coil / t.trench, 1, 0.15);
}

}  // namespace underlawn
