// SPDX-License-Identifier: GPL-3.0-or-later
// What a machine and a crew get done, against worked examples and facts of the trade.
#include <gtest/gtest.h>

#include "dig/crew_wishes.h"
#include "dig/machine.h"

namespace underlawn {
namespace {

constexpr double kYard3 = 0.9144 * 0.9144 * 0.9144;

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

}  // namespace underlawn
