// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

Outcome with_legs(const std::vector<Polyline>& legs) {
  Outcome outcome;
  outcome.layout.run.line = {{0, 0}, {10, 0}};
  outcome.layout.header.legs = legs;
  return outcome;
}

}  // namespace

// A leg from the run's end, one that begins on that leg, and one that ends where both meet.
TEST(ConduitsCross, SaysNothingOfLegsThatBeginOnOneAnother) {
  const Outcome o = with_legs({{{10, 0}, {10, 20}}, {{10, 8}, {25, 8}}, {{3, 12}, {10, 8}}});
  EXPECT_TRUE(checks::conduits_cross(Plan{}, o).empty());
}

TEST(ConduitsCross, NamesEveryPlaceWhereOneLegGoesAcrossAnother) {
  const Outcome o = with_legs({{{10, 0}, {10, 20}}, {{10, 20}, {30, 20}, {30, 10}, {5, 10}, {5, -5}}});
  const auto found = checks::conduits_cross(Plan{}, o);
  ASSERT_EQ(found.size(), 1u);
  ASSERT_EQ(found[0].places.size(), 2u);  // over the first leg and over the run
  for (const Polyline& place : found[0].places)
    EXPECT_TRUE(distance(place[0], {10, 10}) < 1e-9 || distance(place[0], {5, 0}) < 1e-9);
  EXPECT_EQ(found[0].measured, 2);
}

}  // namespace underlawn
