// SPDX-License-Identifier: GPL-3.0-or-later
// Random lots with something held, in groups, by every aim: no rule is broken, whatever is asked for.
#include <gtest/gtest.h>

#include <cstdlib>

#include "core/layout/judge.h"
#include "support/random_lots.h"

namespace underlawn {
namespace {

// Seeds 0 and on; more of them with UNDERLAWN_HELD_LOTS.
int lots() {
  const char* many = std::getenv("UNDERLAWN_HELD_LOTS");
  return many != nullptr ? std::atoi(many) : 8;
}

struct Lot {
  Site site;
  Wishes wishes;
  Coil coil;
};

template <class Change>
void judge_lots(const Change& change, int at_least) {
  int judged = 0;
  for (int seed = 0; seed < lots(); ++seed) {
    const sample::RandomLot random = sample::random_lot(static_cast<std::uint64_t>(seed));
    Lot lot{random.site, random.wishes, {}};
    lot.coil.loop_diameter = 0.6;
    lot.coil.pitch = 0.4;
    lot.coil.trench_length = lot.wishes.trench_length;
    if (!change(lot)) continue;
    const Layout l = make_layout(lot.site, lot.wishes, lot.coil);
    for (const std::string& fault : judge::faults(lot.site, lot.wishes, l, lot.wishes.trench_length))
      ADD_FAILURE() << "seed " << seed << ": " << fault;
    judged += !l.trenches.empty();
  }
  EXPECT_GE(judged, at_least);
}

// Two of the trenches the search places are locked where they are; all of them still keep every rule.
TEST(HeldLots, LockedTrenchesAmongPlacedOnes) {
  judge_lots(
      [](Lot& lot) {
        const Layout l = make_layout(lot.site, lot.wishes, lot.coil);
        for (std::size_t i = 0; i < l.trenches.size() && lot.wishes.locked.size() < 2; i += 2)
          if (l.trenches[i].role == TrenchRole::field)
            lot.wishes.locked.push_back({l.trenches[i].head, l.trenches[i].end});
        return !lot.wishes.locked.empty();
      },
      4);
}

TEST(HeldLots, ADirection) {
  judge_lots([](Lot& lot) { return lot.wishes.direction = 0.7, true; }, 4);
}

TEST(HeldLots, AHeaderLine) {
  judge_lots(
      [](Lot& lot) {
        const Layout l = make_layout(lot.site, lot.wishes, lot.coil);
        if (l.trenches.empty()) return false;
        const Point across = left_normal(unit(l.trenches[0].end - l.trenches[0].head));
        const Point head = l.trenches[0].head;
        lot.wishes.header_on = Segment{head - 15 * across, head + 15 * across};
        return true;
      },
      4);
}

TEST(HeldLots, AClosedSide) {
  judge_lots(
      [](Lot& lot) {
        for (const Feature& f : lot.site.features)
          if (f.kind == FeatureKind::house) lot.wishes.closed = {{f.id, 1}};
        return !lot.wishes.closed.empty();
      },
      3);
}

TEST(HeldLots, TwoGroups) {
  judge_lots([](Lot& lot) { return lot.wishes.groups = 2, true; }, 4);
}

TEST(HeldLots, EveryAim) {
  for (Aim aim : {Aim::lawn, Aim::cost, Aim::trees, Aim::mix})
    judge_lots([aim](Lot& lot) { return lot.wishes.aim = aim, true; }, 4);
}

TEST(HeldLots, AsManyCircuitsAsFit) {
  int more = 0;
  for (std::uint64_t seed = 0; seed < 5; ++seed) {
    sample::RandomLot lot = sample::random_lot(seed);
    Coil coil;
    coil.trench_length = lot.wishes.trench_length;
    lot.wishes.aim = Aim::circuits;
    const Layout l = make_layout(lot.site, lot.wishes, coil);
    more += static_cast<int>(l.trenches.size()) > lot.wishes.circuits;
    // The judge allows no more than asked for.
    lot.wishes.circuits = static_cast<int>(l.trenches.size());
    for (const std::string& fault : judge::faults(lot.site, lot.wishes, l, lot.wishes.trench_length))
      ADD_FAILURE() << "seed " << seed << ": " << fault;
  }
  EXPECT_GT(more, 0);
}

}  // namespace
}  // namespace underlawn
