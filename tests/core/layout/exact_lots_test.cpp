// SPDX-License-Identifier: GPL-3.0-or-later
// The search against optima that Cbc found for 40 lots with a geometry of its own. The numbers are the best
// of one direction out of every whole degree and all edges of lot and house and their perpendiculars, so a
// search that tries other angles too may hold one more.
#include "support/exact_lots.h"

#include <gtest/gtest.h>

#include <iostream>

#include "core/layout/judge.h"
#include "layout/free_lengths.h"

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

const std::string kMetres = std::string(UNDERLAWN_SOURCE_DIR) + "/tests/files/exact_metres.txt";

// The same problem: what the search for the longest rows finds, before header and run take their room.
TEST(ExactLots, AsManyMetresOfFreeLengthInNinetyNineOfAHundred) {
  const auto exact = sample::exact_metres(kMetres);
  ASSERT_EQ(exact.size(), 40u);
  double ours = 0, best = 0;
  for (const sample::ExactLot& lot : sample::exact_lots(kFile)) {
    const Wishes w = sample::wishes_for_metres(lot);
    const Setting setting(lot.site, w, lot.coil, *routable_region(lot.site));
    const FieldSearch search(setting.keeping(), lot.coil, w.circuits, false);
    const auto found = search.longest({w.least_length, w.most_length}, {});
    ASSERT_FALSE(found.empty()) << "lot " << lot.seed;
    EXPECT_LE(metres_of(found.front().trenches), exact.at(lot.seed).bound) << "lot " << lot.seed;
    ours += metres_of(found.front().trenches);
    best += exact.at(lot.seed).most;
  }
  std::cout << ours << " m of " << best << " m\n";
  EXPECT_GE(ours, 0.99 * best);
}

// The whole layout: trenches that a header reaches, and that leave it and the run their room, against optima
// that leave them none.
TEST(ExactLots, JoinedUpTheyKeepNinetyNineInAHundredOfTheirMetres) {
  const auto exact = sample::exact_metres(kMetres);
  double ours = 0, best = 0;
  for (sample::ExactLot lot : sample::exact_lots(kFile)) {
    lot.wishes = sample::wishes_for_metres(lot);
    lot.coil.coil_length = 8 * lot.coil.trench_length;
    const Layout l = make_layout(lot.site, lot.wishes, lot.coil);
    for (const std::string& fault : judge::faults(lot.site, lot.wishes, l, std::nullopt))
      ADD_FAILURE() << "lot " << lot.seed << ": " << fault;
    for (const Trench& t : l.trenches) ours += length_of(t);
    best += exact.at(lot.seed).most;
  }
  std::cout << ours << " m of " << best << " m\n";
  EXPECT_GE(ours, 0.99 * best);
}

// Measured on the lots themselves: where no run is, the entry point lies in a drain field, or nearer a side
// of the lot than its setback and half the trench, so that no run can leave the wall; everywhere else there
// is one.
TEST(ExactLots, WhereThereIsNoWayToTheHouseWhatClosesItIsSaid) {
  const std::map<int, std::string> closed_by = {{1, "setback of lot edge 3"},
                                                {1009, "setback of lot edge 3"},
                                                {25, "setback of lot edge 3"},
                                                {27, "Drain field 2"}};
  for (const sample::ExactLot& lot : sample::exact_lots(kFile)) {
    const Layout l = make_layout(lot.site, lot.wishes, lot.coil);
    const auto known = closed_by.find(lot.seed);
    EXPECT_EQ(l.run.line.empty(), known != closed_by.end()) << "lot " << lot.seed;
    if (known == closed_by.end()) continue;
    const Point entry = lot.site.entry->at;
    if (lot.seed == 27)
      EXPECT_TRUE(contains(find_feature(lot.site, 2)->points, entry));
    else
      EXPECT_LT(distance(Segment{lot.site.lot[2].at, lot.site.lot[3].at}, entry),
                lot.site.lot[2].setback + lot.wishes.run_width / 2);
    ASSERT_EQ(l.troubles.size(), 1u) << "lot " << lot.seed;
    EXPECT_EQ(l.troubles[0].code, "no_way_to_house");
    EXPECT_NE(l.troubles[0].advice.find(known->second + "."), std::string::npos) << l.troubles[0].advice;
  }
}

}  // namespace
}  // namespace underlawn
