// SPDX-License-Identifier: GPL-3.0-or-later
#include "pipe/pipe_size.h"

#include <set>

#include "layout/wishes.h"

namespace underlawn {

TEST(PipeSize, IsFoundByTheNamePlansUse) {
  const auto pipe = find_pipe("3/4 in DR 11");
  ASSERT_TRUE(pipe);
  EXPECT_EQ(pipe->nominal, "3/4 in");
  EXPECT_EQ(pipe->dr, 11);
  EXPECT_DOUBLE_EQ(pipe->outside_diameter, 1.050 * 0.0254);
  EXPECT_TRUE(find_pipe("2 in DR 13.5"));
}

TEST(PipeSize, ThePipesOfANewPlanExist) {
  EXPECT_TRUE(find_pipe(Wishes{}.pipe));
  EXPECT_TRUE(find_pipe(Wishes{}.header_pipe));
}

TEST(PipeSize, AnUnknownNameIsRefusedWithTheNamesThereAre) {
  const auto pipe = find_pipe("7/8 in DR 11");
  ASSERT_FALSE(pipe);
  EXPECT_EQ(pipe.error().code, "pipe_unknown");
  EXPECT_EQ(pipe.error().value, "\"7/8 in DR 11\"");
  EXPECT_THAT(pipe.error().bound, testing::HasSubstr("1-1/4 in DR 11, 1-1/4 in DR 13.5"));
}

TEST(PipeSize, AVeryLongNameDoesNotMakeAVeryLongMessage) {
  EXPECT_LT(find_pipe(std::string(100'000, 'x')).error().value.size(), 70u);
}

TEST(PipeSize, NamesAreUniqueAndWallsAgreeWithTheRatio) {
  std::set<std::string> names;
  for (const PipeSize& p : pipe_sizes()) {
    EXPECT_TRUE(names.insert(p.name).second) << p.name;
    // Printed walls are rounded to a thousandth of an inch.
    EXPECT_NEAR(p.minimum_wall, p.outside_diameter / p.dr, 0.0008 * 0.0254) << p.name;
    EXPECT_LT(p.average_bore(), p.minimum_wall_bore()) << p.name;
    EXPECT_GT(p.average_bore(), 0.7 * p.outside_diameter) << p.name;
  }
  EXPECT_EQ(names.size(), 30u);
}

TEST(PipeSize, ThinnerWallsBendLess) {
  EXPECT_LT(find_pipe("1 in DR 11")->least_bend_radius(), find_pipe("1 in DR 17")->least_bend_radius());
  EXPECT_LT(find_pipe("1 in DR 11")->least_bend_radius(), find_pipe("2 in DR 11")->least_bend_radius());
}

}  // namespace underlawn
