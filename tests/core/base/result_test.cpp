// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/result.h"

#include <gtest/gtest.h>

namespace underlawn {

TEST(Trouble, SaysThingValueBoundAndAdvice) {
  const Trouble t{"trench_width_not_positive", "trench width", "-0.30 m", "more than 0 m",
                  "Enter the width of the bucket."};
  EXPECT_EQ(t.message(), "Trench width is -0.30 m; it must be more than 0 m. Enter the width of the bucket.");
}

TEST(Trouble, LeavesOutWhatItDoesNotKnow) {
  EXPECT_EQ((Trouble{"x", "entry point", "", "on a house", ""}.message()), "Entry point must be on a house.");
  EXPECT_EQ((Trouble{"x", "the file", "empty", "", "Choose another."}.message()),
            "The file is empty. Choose another.");
  EXPECT_EQ((Trouble{"x", "no way to the house", "", "", ""}.message()), "No way to the house.");
  EXPECT_EQ((Trouble{"x", "", "", "", "Draw the lot line."}.message()), "Draw the lot line.");
  EXPECT_EQ(Trouble{}.message(), "");
}

TEST(Trouble, DoesNotDoubleAFullStop) {
  EXPECT_EQ((Trouble{"x", "The disk is full.", "", "", "Free some space."}.message()),
            "The disk is full. Free some space.");
}

}  // namespace underlawn
