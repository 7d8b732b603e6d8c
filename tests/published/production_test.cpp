// SPDX-License-Identifier: GPL-3.0-or-later
// What a machine and a crew get done, against worked examples and facts of the trade.
#include <gtest/gtest.h>

#include "cost/crew.h"
#include "cost/estimate.h"

namespace underlawn {
namespace {

constexpr double kFoot = 0.3048;
constexpr double kYard3 = 0.9144 * 0.9144 * 0.9144;

Trench trench(int number, double y) {
  Trench t;
  t.number = number;
  t.head = {0, y};
  t.end = {100 * kFoot, y};
  t.width = 3 * kFoot;
  t.depth = 6 * kFoot;
  t.coil.coil_length = 800 * kFoot;
  t.coil.trench_length = 100 * kFoot;
  return t;
}

// Four coil trenches 12 ft apart, heads on a header of 36 ft, and the run of 60 ft to the house.
Layout trade_field() {
  Layout layout;
  for (int i = 0; i < 4; ++i) layout.trenches.push_back(trench(i + 1, 12 * kFoot * i));
  layout.header = {{{{0, 0}, {0, 36 * kFoot}}}, 36 * kFoot};
  layout.run = {{{-60 * kFoot, 0}, {0, 0}}, 60 * kFoot};
  return layout;
}

Estimate trade_estimate() {
  const Layout layout = trade_field();
  return make_cost({}, layout, make_dig(layout, {}, {}), {}, {}, 5 * 3600).vertical;
}

}  // namespace

// Nunnally, Construction Methods and Management, ex. 3-2 (from memory): a bucket of 3/4 yd3 heaped, 250
// cycles an hour, fill 0.95, 50 minutes of the hour: 148 loose yd3 an hour.
TEST(Production, OfAHydraulicExcavatorByNunnally) {
  const Machine machine{"", 0.75 * kYard3, 0.95, 3600.0 / 250, 50.0 / 60, 1, 1, 1};
  EXPECT_NEAR(loose_rate(machine) * 3600 / kYard3, 148, 0.5);
  EXPECT_NEAR(bank_rate(machine, 0.25) * 3600 / kYard3, 148.4 / 1.25, 0.1);
}

// Fill 60 to 115 %, efficiency 40 to 83 % (toolgrit.com); a small machine no faster than Nunnally's standard
// 250 cycles an hour.
TEST(Production, OurMachinesStayWithinPublishedRanges) {
  for (const Machine& m : {usual_excavator(), usual_loader()}) {
    EXPECT_GE(m.fill, 0.60);
    EXPECT_LE(m.fill, 1.15);
    EXPECT_GE(m.efficiency, 0.40);
    EXPECT_LE(m.efficiency, 0.83);
    EXPECT_LE(3600 / m.cycle, 250);
  }
}

// Four coil trenches of 100 ft by 3 ft by 6 ft and the run to the house are two days' digging, and a coil is
// made in about the time its trench is dug: common practice, no source.
TEST(Production, FourCoilTrenchesAndTheRunAreTwoDaysDigging) {
  const CrewTime t = trade_estimate().time;
  EXPECT_NEAR(days_of(t.digging), 2, 0.25);
  EXPECT_NEAR(t.coil / t.trench, 1, 0.15);
  EXPECT_NEAR(days_of(t.laid), 2, 0.25);
}

}  // namespace underlawn
