// SPDX-License-Identifier: GPL-3.0-or-later
// Locks while something is dragged: one placing a frame, and nothing moves that need not.
#include <gtest/gtest.h>

#include <iostream>

#include "layout/layout.h"
#include "layout/locked_in_place.h"
#include "support/random_lots.h"

namespace underlawn {
namespace {

// What the window keeps of a layout that is shown.
std::vector<Segment> shown(const Layout& l) {
  std::vector<Segment> all;
  for (const Trench& t : l.trenches)
    if (t.role == TrenchRole::field && !t.locked) all.push_back({t.head, t.end});
  return all;
}

bool same_places(const Layout& a, const Layout& b, double within) {
  if (a.trenches.size() != b.trenches.size()) return false;
  return std::all_of(a.trenches.begin(), a.trenches.end(), [&](const Trench& t) {
    return std::any_of(b.trenches.begin(), b.trenches.end(), [&](const Trench& o) {
      return std::hypot(t.head.x - o.head.x, t.head.y - o.head.y) < within &&
             std::hypot(t.end.x - o.end.x, t.end.y - o.end.y) < within;
    });
  });
}

double dug(const Layout& l) {
  return l.header.length + l.run.length;
}

GivenTrench lock_of(const Trench& t) {
  return {t.head, t.end};
}

TEST(Locks, WhatWasShownIsKeptWholeEachTrenchOnce) {
  Wishes w;
  w.locked = {{{0, 0}, {20, 0}}, {{0, 4}, {20, 4}}};
  EXPECT_TRUE(kept_with_locked(w).empty());
  w.kept = {{{0, 4}, {20, 4}}, {{0, 8}, {20, 8}}};
  const std::vector<Segment> whole = {{{0, 4}, {20, 4}}, {{0, 8}, {20, 8}}, {{0, 0}, {20, 0}}};
  EXPECT_EQ(kept_with_locked(w), whole);
}

// A lock is set on one trench of the picture, then on a second; then the lot is solved again round both as
// when a drag begins.
TEST(Locks, SetOneAfterAnotherMoveNothingNorDoesTheBeginningOfADrag) {
  int lots = 0, first = 0, second = 0, begun = 0, gained = 0;
  for (std::uint64_t seed = 0; seed < 120; ++seed) {
    const sample::RandomLot lot = sample::random_lot(seed);
    Wishes w = lot.wishes;
    w.coil_in_run = false;
    Coil coil;
    coil.trench_length = w.trench_length;
    coil.coil_length = 8 * w.trench_length;
    const Layout plain = make_layout(lot.site, w, coil);
    if (plain.trenches.size() < 3 || plain.run.line.empty()) continue;
    ++lots;
    w.locked = {lock_of(plain.trenches[seed % plain.trenches.size()])};
    w.kept = shown(plain);
    const Layout one = make_layout(lot.site, w, coil);
    first += same_places(plain, one, 1e-6);
    const Trench* next = nullptr;
    for (const Trench& t : one.trenches)
      if (!t.locked && t.role == TrenchRole::field) next = &t;
    if (next != nullptr) w.locked.push_back(lock_of(*next));
    w.kept = shown(one);
    const Layout two = make_layout(lot.site, w, coil);
    second += same_places(one, two, 1e-6);
    w.kept = shown(two);
    const Layout again = make_layout(lot.site, w, coil);
    const bool same = same_places(two, again, 1e-3);
    begun += same;
    gained += !same && dug(again) < dug(two) - 0.5;
    if (!same)
      std::cout << "seed " << seed << ": moved, " << dug(two) << " m of header and run, then " << dug(again)
                << '\n';
  }
  std::cout << lots << " lots: nothing moved at the first lock on " << first << ", at the second on "
            << second << ", at the beginning of a drag on " << begun << ", and on " << gained
            << " for a gain\n";
  EXPECT_GT(lots, 10);
  EXPECT_EQ(first, lots);
  EXPECT_EQ(second, lots);
  EXPECT_EQ(begun + gained, lots);
}

}  // namespace
}  // namespace underlawn
