// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::coil_pitch_range;
using crafted::keys;

}  // namespace

TEST(CoilPitchRange, SaysNothingOfAnOrdinaryPitch) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(coil_pitch_range(plan, crafted::two_trenches(plan)).empty());
}

TEST(CoilPitchRange, WarnsWhenLoopsDoNotOverlap) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.coil.pitch = 0.95;
  EXPECT_EQ(keys(coil_pitch_range(plan, outcome)), Keys{"coil_pitch_range/wide"});
}

TEST(CoilPitchRange, WarnsWhenLoopsLieTooTight) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.coil.pitch = 0.1;
  const auto found = coil_pitch_range(plan, outcome);
  ASSERT_EQ(keys(found), Keys{"coil_pitch_range/tight"});
  EXPECT_NEAR(found[0].required, 4 * 0.02667, 1e-4);
}

}  // namespace underlawn
