// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::coil_cut_unequal;
using crafted::keys;

}  // namespace

TEST(CoilCutUnequal, SaysNothingOfEqualCoils) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(coil_cut_unequal(plan, crafted::two_trenches(plan)).empty());
}

TEST(CoilCutUnequal, NamesTheShortCoil) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.trenches[1].coil.coil_length = 230;
  const auto found = coil_cut_unequal(plan, outcome);
  ASSERT_EQ(keys(found), Keys{"coil_cut_unequal/trench-2"});
  EXPECT_EQ(found[0].measured, 230);
  EXPECT_NEAR(found[0].required, 0.98 * 240, 1e-9);
}

}  // namespace underlawn
