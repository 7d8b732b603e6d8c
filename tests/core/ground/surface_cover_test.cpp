// SPDX-License-Identifier: GPL-3.0-or-later
#include "ground/surface_cover.h"

#include <gtest/gtest.h>

using namespace underlawn;

// ISO 6946 takes 0.04 m2 K/W for the air film outdoors at 4 m/s: no cover can be below it, and one of more
// than three times that would no longer be grass (common practice, no source).
TEST(SurfaceCover, ResistancesRiseFromTheBareAirFilm) {
  double before = 0;
  for (const SurfaceCover& cover : surface_covers()) {
    EXPECT_GE(cover.resistance, 0.04) << cover.name;
    EXPECT_LE(cover.resistance, 0.12) << cover.name;
    EXPECT_GT(cover.resistance, before) << cover.name;
    before = cover.resistance;
  }
  EXPECT_EQ(surface_covers().size(), 3u);
}
