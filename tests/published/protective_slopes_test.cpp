// SPDX-License-Identifier: GPL-3.0-or-later
// Protective slopes and trench volumes against the federal rule and plain arithmetic in its units.
#include <numbers>

#include "dig/dig.h"

namespace underlawn {
namespace {

constexpr double kFoot = 0.3048;
constexpr double kCubicFoot = kFoot * kFoot * kFoot;
constexpr double kCubicYard = 27 * kCubicFoot;

double hundred_feet_by_three(double depth_feet, double slope) {
  return trench_volume(100 * kFoot, 3 * kFoot, depth_feet * kFoot, slope);
}

double degrees(double slope) {
  return std::atan2(1, slope) * 180 / std::numbers::pi;
}

}  // namespace

// 29 CFR 1926 Subpart P, Appendix B, Table B-1, excavations less than 20 ft deep: stable rock vertical (90),
// Type A 3/4:1 (53), Type B 1:1 (45), Type C 1-1/2:1 (34 degrees).
TEST(PublishedSlopes, AreThoseOfTableB1) {
  EXPECT_EQ(slope_for(SoilType::stable_rock), 0);
  EXPECT_EQ(slope_for(SoilType::type_a), 0.75);
  EXPECT_EQ(slope_for(SoilType::type_b), 1);
  EXPECT_EQ(slope_for(SoilType::type_c), 1.5);
  EXPECT_EQ(std::round(degrees(slope_for(SoilType::stable_rock))), 90);
  EXPECT_EQ(std::round(degrees(slope_for(SoilType::type_a))), 53);
  EXPECT_EQ(std::round(degrees(slope_for(SoilType::type_b))), 45);
  EXPECT_EQ(std::round(degrees(slope_for(SoilType::type_c))), 34);
}

// 29 CFR 1926.652(a)(1): protective system from 5 ft (1.52 m).
TEST(PublishedSlopes, ProtectionBeginsAtFiveFeet) {
  EXPECT_NEAR(kProtectFrom / kFoot, 5, 1e-12);
}

// One coil trench of the trade, 100 ft by 3 ft by 6 ft (common practice, no source), is 1,800 cubic
// feet, 66.7 cubic yards of bank soil by arithmetic.
TEST(PublishedSlopes, AHundredFootTrenchIsEighteenHundredCubicFeet) {
  EXPECT_NEAR(hundred_feet_by_three(6, 0) / kCubicFoot, 1800, 1e-9);
  EXPECT_NEAR(hundred_feet_by_three(6, 0) / kCubicYard, 66.7, 0.05);
}

// The same by hand in cubic yards: 5 ft vertical; 6 ft at 1:1, top width 15 ft; 6 ft at 1-1/2:1, top width 21
// ft.
TEST(PublishedSlopes, SlopedTrenchesAreTheTrapezoidsOfTableB1) {
  EXPECT_NEAR(hundred_feet_by_three(5, slope_for(SoilType::stable_rock)) / kCubicYard, 55.56, 0.005);
  EXPECT_NEAR(hundred_feet_by_three(6, slope_for(SoilType::type_b)) / kCubicYard, 200.00, 0.005);
  EXPECT_NEAR(hundred_feet_by_three(6, slope_for(SoilType::type_c)) / kCubicYard, 266.67, 0.005);
}

}  // namespace underlawn
