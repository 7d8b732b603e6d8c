// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/random_lots.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cstdlib>
#include <functional>
#include <thread>

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

struct Move {
  double angle = 0;
  Point by;
  Point operator()(Point p) const { return rotated(p, angle) + by; }
};

Site moved(Site site, const Move& move) {
  for (LotCorner& c : site.lot) c.at = move(c.at);
  for (Feature& f : site.features)
    for (Point& p : f.points) p = move(p);
  if (site.entry) site.entry->at = move(site.entry->at);
  return site;
}

// Each trench lies within a millimetre of where the move brings one of the other layout's.
bool same_places(const Layout& straight, const Layout& other, const Move& move) {
  if (straight.trenches.size() != other.trenches.size()) return false;
  return std::all_of(straight.trenches.begin(), straight.trenches.end(), [&](const Trench& t) {
    return std::any_of(other.trenches.begin(), other.trenches.end(), [&](const Trench& o) {
      return distance(move(t.head), o.head) < 1e-3 && distance(move(t.end), o.end) < 1e-3;
    });
  });
}

struct Shares {
  int counts = 0, places = 0, all = 0;
};
// How many of the lots hold another number, or have other places, once moved.
Shares differing(const std::function<Move(int)>& move_of) {
  Shares d;
  d.all = std::max(1, lots_asked() / 4);
  for (int i = 0; i < d.all; ++i) {
    const std::uint64_t seed = seed_of(i);
    sample::RandomLot lot = sample::random_lot(seed);
    const Coil coil = coil_of(lot.wishes.trench_length);
    const Layout straight = make_layout(lot.site, lot.wishes, coil);
    const Move move = move_of(i);
    lot.site = moved(lot.site, move);
    const Layout other = make_layout(lot.site, lot.wishes, coil);
    expect_legal(seed, lot, other);
    const auto here = static_cast<int>(straight.trenches.size()),
               there = static_cast<int>(other.trenches.size());
    EXPECT_LE(std::abs(here - there), 1) << "seed " << seed;
    d.counts += here != there;
    d.places += !same_places(straight, other, move);
  }
  return d;
}

// A lot shifted, and a lot turned, gets the shifted, the turned answer. Rounding can decide between places
// that a ten-thousandth of a metre parts, so few may differ, and one in fifty by a trench.
TEST(RandomLots, ShiftedHaveTheShiftedPlaces) {
  const Shares d = differing([](int i) { return Move{0, {31.7 + i, -12.9}}; });
  EXPECT_LE(d.counts, 1 + d.all / 50);
  EXPECT_LE(d.places, 1 + d.all / 20) << "of " << d.all;
}

TEST(RandomLots, TurnedHaveTheTurnedPlaces) {
  const Shares d = differing([](int i) { return Move{0.4 + 0.01 * (i % 90), {31.7, -12.9}}; });
  EXPECT_LE(d.counts, 1 + d.all / 50);
  EXPECT_LE(d.places, 1 + d.all / 20) << "of " << d.all;
}

// Rows whose places an obstacle narrower than the samples shuts: these once were packed without looking.
TEST(RandomLots, ThoseWhoseRowsShutBetweenTheSamples) {
  for (std::uint64_t seed : {1535, 10383, 25030}) {
    const sample::RandomLot lot = sample::random_lot(seed);
    expect_legal(seed, lot, make_layout(lot.site, lot.wishes, coil_of(lot.wishes.trench_length)));
  }
}

// A newer drawing stops the search for the last one, wherever that is.
TEST(RandomLots, MayBeStoppedAtAnyMoment) {
  int stopped = 0;
  for (std::uint64_t seed = 0; seed < 120; ++seed) {
    const sample::RandomLot lot = sample::random_lot(seed);
    std::jthread search([&](std::stop_token stop) {
      (void)make_layout(lot.site, lot.wishes, coil_of(lot.wishes.trench_length), stop);
      stopped += stop.stop_requested();
    });
    std::this_thread::sleep_for(std::chrono::microseconds(100 * (seed % 40)));
  }
  EXPECT_GT(stopped, 0);
}

// The coil in the run, of which a clearance was held with a millimetre to spare twice over.
TEST(RandomLots, ThatWhoseCoilInTheRunCameTooNear) {
  const sample::RandomLot lot = sample::random_lot(14969);
  expect_legal(14969, lot, make_layout(lot.site, lot.wishes, coil_of(lot.wishes.trench_length)));
}

}  // namespace
}  // namespace underlawn
