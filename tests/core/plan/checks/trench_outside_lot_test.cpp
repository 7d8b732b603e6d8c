// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::trench_outside_lot;
using crafted::keys;

}  // namespace

TEST(TrenchOutsideLot, SaysNothingOfTrenchesInside) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(trench_outside_lot(plan, crafted::two_trenches(plan)).empty());
}

TEST(TrenchOutsideLot, MeasuresHowFarTheTrenchReachesOut) {
  const Plan plan = crafted::plan();
  const auto found =
      trench_outside_lot(plan, crafted::outcome(plan, {crafted::trench(1, {90, 50}, {102, 50})}));
  ASSERT_EQ(keys(found), Keys{"trench_outside_lot/trench-1"});
  EXPECT_NEAR(found[0].measured, 2, 1e-9);
  EXPECT_EQ(found[0].severity, Severity::error);
}

TEST(TrenchOutsideLot, SeesALotCornerThatReachesIntoTheTrench) {
  Plan plan = crafted::plan();
  // A notch 0.2 m wide comes in from the south as far as the trench's middle line.
  plan.site.lot = {{{0, 0}, 0},   {{49.9, 0}, 0},  {{50, 50}, 0}, {{50.1, 0}, 0},
                   {{100, 0}, 0}, {{100, 100}, 0}, {{0, 100}, 0}};
  const auto found =
      trench_outside_lot(plan, crafted::outcome(plan, {crafted::trench(1, {30, 50}, {70, 50})}));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0].measured, 0.5, 1e-9);
}

TEST(TrenchOutsideLot, SeesALotLineThatCutsRightThroughTheTrench) {
  Plan plan = crafted::plan();
  plan.site.lot = {{{0, 0}, 0},   {{49.9, 0}, 0},  {{50, 80}, 0}, {{50.1, 0}, 0},
                   {{100, 0}, 0}, {{100, 100}, 0}, {{0, 100}, 0}};
  EXPECT_EQ(trench_outside_lot(plan, crafted::outcome(plan, {crafted::trench(1, {30, 50}, {70, 50})})).size(),
            1u);
}

TEST(TrenchOutsideLot, ATrenchAlongTheLotLineIsInside) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(
      trench_outside_lot(plan, crafted::outcome(plan, {crafted::trench(1, {0, 0.5}, {30, 0.5})})).empty());
}

}  // namespace underlawn
