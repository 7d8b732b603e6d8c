// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/loop_test.h"

#include <gtest/gtest.h>

#include "flow/test_procedure.h"

namespace underlawn {
namespace {

LoopVolume loop_of_dr11() {
  return {{{"circuit", 21.5e-3, 26.7e-3, 11, 250}}};
}

TEST(LoopTest, UsualTestIsSoundAndPlannedAtTheCrewsPressure) {
  LoopTest test;
  EXPECT_TRUE(loop_test_troubles(test).empty());
  test.gauge_height = 0;
  const auto planned = planned_test(test, loop_of_dr11());
  ASSERT_TRUE(planned);
  // 90 psi on the gauge: common practice, no source.
  EXPECT_NEAR(planned->pressure.at_gauge / kPsi, 90, 0.01);
}

TEST(LoopTest, GaugeAboveTheLoopReadsLessByTheWaterBetween) {
  LoopTest low, high;
  low.gauge_height = 0;
  high.gauge_height = 10;
  const auto a = planned_test(low, loop_of_dr11()), b = planned_test(high, loop_of_dr11());
  ASSERT_TRUE(a && b);
  EXPECT_NEAR(a->pressure.at_gauge - b->pressure.at_gauge, 1000 * 9.80665 * 10, 50) << "rho g h";
}

TEST(LoopTest, WeakFittingCapsThePressureAndIsNamed) {
  LoopTest test;
  test.gauge_height = 0;
  test.weakest_fitting = 75 * kPsi;
  test.fitting_name = "union at the wall";
  const auto planned = planned_test(test, loop_of_dr11());
  ASSERT_TRUE(planned);
  EXPECT_TRUE(planned->pressure.capped);
  EXPECT_NEAR(planned->pressure.at_gauge, 75 * kPsi, 1);
  EXPECT_NE(planned->pressure.why.find("union at the wall"), std::string::npos);
}

TEST(LoopTest, EveryProcedureIsAProgrammeThatCanBeRun) {
  for (int i = 0; i < 4; ++i) {
    LoopTest test;
    test.procedure = static_cast<TestProcedure>(i);
    const auto planned = planned_test(test, loop_of_dr11());
    ASSERT_TRUE(planned) << i;
    EXPECT_TRUE(check_programme(planned->programme)) << test_procedure_name(test.procedure);
  }
}

TEST(LoopTest, WhatIsOutOfBoundsIsNamed) {
  LoopTest test;
  test.gauge_height = 400;
  test.readings = {{10, 600e3, {}}, {5, 600e3, {}}};
  const auto troubles = loop_test_troubles(test);
  ASSERT_EQ(troubles.size(), 2U);
  EXPECT_EQ(troubles[0].code, "test_gauge_height_out_of_bounds");
  EXPECT_NE(troubles[0].value.find("400"), std::string::npos);
}

}  // namespace
}  // namespace underlawn
