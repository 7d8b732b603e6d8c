// SPDX-License-Identifier: GPL-3.0-or-later
// The search against optima that Cbc found for 40 lots with a geometry of its own. The numbers are the best
// of one direction out of every whole degree and all edges of lot and house and their perpendiculars, so a
// search that tries other angles too may hold one more.
#include "support/exact_lots.h"

#include <gtest/gtest.h>

#include "core/layout/judge.h"

namespace underlawn {
namespace {

const std::string kFile = std::string(UNDERLAWN_SOURCE_DIR) + "/tests/files/exact_lots.txt";

TEST(ExactLots, AsManyEqualTrenchesAsCbcFindsInNinetyNineOfAHundred) {
  int ours = 0, best = 0;
  const auto lots = sample::exact_lots(kFile);
  ASSERT_EQ(lots.size(), 40u);
  for (const sample::ExactLot& lot : lots) {
    const Layout l = make_layout(lot.site, lot.wishes, lot.coil);
    EXPECT_GE(l.fits, lot.most - 1) << "lot " << lot.seed << " (" << lot.shape << ")";
    EXPECT_EQ(static_cast<int>(l.trenches.size()), l.fits) << "lot " << lot.seed;
    for (const std::string& fault : judge::faults(lot.site, lot.wishes, l, lot.coil.trench_length))
      ADD_FAILURE() << "lot " << lot.seed << ": " << fault;
    ours += l.fits;
    best += lot.most;
  }
  EXPECT_GE(ours, 0.99 * best) << ours << " of " << best;
}

// The bound of the file holds for every set of trenches of one of its directions, to within what lies between
// its samples; a search that beat it by more than one would be counting what is not there.
TEST(ExactLots, NoMoreThanTheBound) {
  for (const sample::ExactLot& lot : sample::exact_lots(kFile))
    EXPECT_LE(make_layout(lot.site, lot.wishes, lot.coil).fits, lot.bound + 1) << "lot " << lot.seed;
}

}  // namespace
}  // namespace underlawn
