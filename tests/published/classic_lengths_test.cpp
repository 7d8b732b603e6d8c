// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/classic_lengths.h"

#include <gtest/gtest.h>

using namespace underlawn;

// The design-length equations of Bose, Parker & McQuiston 1985 (ASHRAE) and of IGSHPA (from memory), worked
// by hand in their own units: Btu/h, h ft F/Btu, F. 36 000 (2.5/3.5) (0.14 + 1.4 x 0.55)/(44 - 30) = 1671.4
// ft.
TEST(ClassicLengths, HeatingAsWorkedByHand) {
  EXPECT_NEAR(classic_heating_length({36'000, 3.5, 0.14, 1.4, 0.55, 44, 30, 0}), 1671.4, 0.05);
}

// 36 000 (17.412/14) (0.14 + 1.4 x 0.40)/(95 - 68) = 1160.8 ft; EER 14 is a COP of 14/3.412.
TEST(ClassicLengths, CoolingAsWorkedByHand) {
  EXPECT_NEAR(classic_cooling_length({36'000, 14 / 3.412, 0.14, 1.4, 0.40, 68, 95, 6}), 1160.8, 0.05);
}
