// SPDX-License-Identifier: GPL-3.0-or-later
// Protective systems and ways out against 29 CFR 1926 Subpart P.
#include "dig/protection.h"

#include <cmath>

namespace underlawn {
namespace {

constexpr double kFoot = 0.3048;

}  // namespace

// 1926.652(a)(1): none in stable rock or below 5 ft.
TEST(PublishedProtection, IsDueFromFiveFeetOutsideRock) {
  for (SoilType soil : {SoilType::type_a, SoilType::type_b, SoilType::type_c}) {
    EXPECT_TRUE(protection_due(soil, 5 * kFoot));
    EXPECT_FALSE(protection_due(soil, 4.99 * kFoot));
  }
  EXPECT_FALSE(protection_due(SoilType::stable_rock, 15 * kFoot));
}

// Appendix B, Table B-1 and its note: Type A open no longer than 24 h and no deeper than 12 ft, 1/2:1.
TEST(PublishedProtection, TypeAMayBeSteeperForADay) {
  EXPECT_EQ(least_slope(SoilType::type_a, 12 * kFoot, 24 * 3600), 0.5);
  EXPECT_EQ(least_slope(SoilType::type_a, 12.1 * kFoot, 24 * 3600), 0.75);
  EXPECT_EQ(least_slope(SoilType::type_a, 6 * kFoot, 25 * 3600), 0.75);
  EXPECT_EQ(least_slope(SoilType::type_a, 6 * kFoot, 0), 0.75);
  EXPECT_EQ(least_slope(SoilType::type_b, 6 * kFoot, 3600), 1);
  EXPECT_EQ(least_slope(SoilType::type_c, 6 * kFoot, 3600), 1.5);
}

// Table B-1, note 3: deeper than 20 ft a registered professional engineer designs the slope.
TEST(PublishedProtection, BeyondTwentyFeetAnEngineerDesigns) {
  const auto laid_back = [](double feet) {
    return sides_choices(SoilType::type_b, feet * kFoot)[static_cast<std::size_t>(Sides::slope)];
  };
  EXPECT_TRUE(laid_back(20).allowed);
  EXPECT_FALSE(laid_back(20.1).allowed);
  EXPECT_EQ(laid_back(6).slope, 1);
}

// 1926.651(c)(2): in trenches 4 ft deep and more no more than 25 ft of lateral travel to a way out; so a
// trench of 100 ft has two ladders, one of 101 ft three.
TEST(PublishedProtection, LaddersAreWithinTwentyFiveFeet) {
  EXPECT_TRUE(ladder_places(100 * kFoot, 3.9 * kFoot).empty());
  EXPECT_EQ(ladder_places(100 * kFoot, 4 * kFoot).size(), 2u);
  EXPECT_EQ(ladder_places(101 * kFoot, 6 * kFoot).size(), 3u);
  EXPECT_EQ(ladder_places(10 * kFoot, 6 * kFoot).size(), 1u);
  const auto two = ladder_places(100 * kFoot, 6 * kFoot);
  EXPECT_NEAR(two[0] / kFoot, 25, 1e-9);
  EXPECT_NEAR(two[1] / kFoot, 75, 1e-9);
}

// 1926.651(j)(2): spoil and equipment at least 2 ft from the edge.
TEST(PublishedProtection, SpoilKeepsTwoFeetUnlessAskedOtherwise) {
  EXPECT_NEAR(DigWishes{}.spoil_off / kFoot, 2, 1e-12);
}

}  // namespace underlawn
