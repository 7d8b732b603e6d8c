// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/passing.h"

#include <gtest/gtest.h>

namespace underlawn {

TEST(Passing, UnderAShallowLineOverADeepOneAndNeitherAtItsDepth) {
  Crossing x;
  x.trench_depth = 1.5;
  x.utility_depth = 0.9;
  EXPECT_EQ(passing(x, 0.15), Passing::under);
  x.utility_depth = 1.5;
  EXPECT_EQ(passing(x, 0.15), Passing::over);
  x.utility_depth = 2;
  EXPECT_EQ(passing(x, 0.15), Passing::over);
  // Its top at 1.3 m, 0.15 m thick: down to 1.45 m, where our bedding begins at 1.35 m.
  x.utility_depth = 1.3;
  EXPECT_EQ(passing(x, 0.15), Passing::level);
}

}  // namespace underlawn
