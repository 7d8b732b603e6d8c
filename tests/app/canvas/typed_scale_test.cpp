// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/typed_scale.h"

#include <gtest/gtest.h>

using namespace underlawn;

TEST(TypedScale, IsReadAsItIsWritten) {
  for (const char* text : {"1:240", "240", "1 in = 20 ft", "1\" = 20'", "1/2 in = 10'"}) {
    const auto scale = typed_scale(text, UnitSystem::us);
    ASSERT_TRUE(scale.has_value()) << text;
    EXPECT_NEAR(*scale, 240, 1e-9) << text;
  }
  EXPECT_NEAR(typed_scale("1 cm = 2 m", UnitSystem::metric).value(), 200, 1e-9);
  EXPECT_EQ(scale_text(240.2), "1:240");
}

TEST(TypedScale, WhatIsNoneIsRefusedWithItsText) {
  for (const char* text : {"", "0", "-5", "1:0", "1:", "abc", "1 in = ", "1e300", "1:1e9", "1 in = -2 ft"})
    EXPECT_FALSE(typed_scale(text, UnitSystem::us).has_value()) << text;
}
