// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::coil_wider_than_trench;
using crafted::keys;

}  // namespace

TEST(CoilWiderThanTrench, LoopsAsWideAsTheTrenchAreUsual) {
  Plan plan = crafted::plan();
  plan.wishes.trench_width = 0.9;
  EXPECT_TRUE(coil_wider_than_trench(plan, crafted::two_trenches(plan)).empty());
}

TEST(CoilWiderThanTrench, WiderLoopsAreAnError) {
  Plan plan = crafted::plan();
  plan.wishes.trench_width = 0.8;
  const auto found = coil_wider_than_trench(plan, crafted::two_trenches(plan));
  ASSERT_EQ(keys(found), Keys{"coil_wider_than_trench/coil"});
  EXPECT_EQ(found[0].measured, 0.8);
  EXPECT_EQ(found[0].required, 0.9);
}

}  // namespace underlawn
