// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/random_lots.h"

#include <gtest/gtest.h>

#include <cstdlib>

#include "core/layout/judge.h"

namespace underlawn {
namespace {

constexpr int kLots = 200;

int number_in(const char* variable, int usual) {
  const char* asked = std::getenv(variable);
  return asked != nullptr ? std::max(0, std::atoi(asked)) : usual;
}

// UNDERLAWN_LOTS=100000 runs as many: hours. UNDERLAWN_LOTS_FROM=5000 begins at that seed, so that they can
// be run in pieces.
int lots_asked() {
  return std::max(1, number_in("UNDERLAWN_LOTS", kLots));
}
std::uint64_t seed_of(int lot) {
  return static_cast<std::uint64_t>(number_in("UNDERLAWN_LOTS_FROM", 0)) + static_cast<std::uint64_t>(lot);
}

Coil coil_of(double trench_length) {
  Coil c;
  c.trench_length = trench_length;
  return c;
}

void expect_legal(std::uint64_t seed, const sample::RandomLot& lot, const Layout& layout) {
  for (const std::string& fault : judge::faults(lot.site, lot.wishes, layout, lot.wishes.trench_length))
    ADD_FAILURE() << "seed " << seed << ": " << fault;
}

// No trench, header or run leaves the lot, enters ground it may not, or stands nearer its neighbour than
// asked; the answer is the same twice.
TEST(RandomLots, KeepEveryRuleByTheJudgesMeasure) {
  const int lots = lots_asked();
  int with_trenches = 0, with_run = 0, again = 0;
  for (int i = 0; i < lots; ++i) {
    const std::uint64_t seed = seed_of(i);
    const sample::RandomLot lot = sample::random_lot(seed);
    const Layout layout = make_layout(lot.site, lot.wishes, coil_of(lot.wishes.trench_length));
    expect_legal(seed, lot, layout);
    with_trenches += !layout.trenches.empty();
    with_run += !layout.run.line.empty();
    if (i % 4 != 0) continue;
    ++again;
    EXPECT_EQ(layout, make_layout(lot.site, lot.wishes, coil_of(lot.wishes.trench_length)))
        << "seed " << seed;
  }
  // The lots are such that the judge has work.
  EXPECT_GT(with_trenches, lots / 3);
  EXPECT_GT(with_run, lots / 4);
  EXPECT_GT(again, 0);
}

// A lot turned and shifted holds as many. Rounding can decide between places that a ten-thousandth of a metre
// parts, so one lot in fifty may differ by one.
TEST(RandomLots, TurnedAndShiftedHoldAsMany) {
  const int lots = std::max(1, lots_asked() / 4);
  int different = 0;
  for (int i = 0; i < lots; ++i) {
    const std::uint64_t seed = seed_of(i);
    sample::RandomLot lot = sample::random_lot(seed);
    const Coil coil = coil_of(lot.wishes.trench_length);
    const Layout straight = make_layout(lot.site, lot.wishes, coil);
    const auto move = [&](Point& p) { p = rotated(p, 0.4 + 0.01 * (i % 90)) + Point{31.7, -12.9}; };
    for (LotCorner& c : lot.site.lot) move(c.at);
    for (Feature& f : lot.site.features)
      for (Point& p : f.points) move(p);
    if (lot.site.entry) move(lot.site.entry->at);
    const Layout turned = make_layout(lot.site, lot.wishes, coil);
    expect_legal(seed, lot, turned);
    const auto here = static_cast<int>(straight.trenches.size()),
               there = static_cast<int>(turned.trenches.size());
    EXPECT_LE(std::abs(here - there), 1) << "seed " << seed;
    different += here != there;
  }
  EXPECT_LE(different, 1 + lots / 50);
}

// Rows whose places an obstacle narrower than the samples shuts: these once were packed without looking.
TEST(RandomLots, ThoseWhoseRowsShutBetweenTheSamples) {
  for (std::uint64_t seed : {1535, 10383, 25030}) {
    const sample::RandomLot lot = sample::random_lot(seed);
    expect_legal(seed, lot, make_layout(lot.site, lot.wishes, coil_of(lot.wishes.trench_length)));
  }
}

}  // namespace
}  // namespace underlawn
