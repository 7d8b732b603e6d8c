// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "layout/layout.h"
#include "layout/legality.h"

namespace underlawn {
namespace {

Coil coil_of(double trench_length) {
  CoilRequest r;
  r.trench_length = trench_length;
  r.coil_length = 8 * trench_length;
  return *solve_coil(r);
}

Site lot_of(const Ring& ring) {
  Site s;
  for (Point p : ring) s.lot.push_back({p, 3});
  return s;
}

Wishes wishes(int circuits, double least, double most) {
  Wishes w;
  w.circuits = circuits;
  w.coil_in_run = false;
  w.aim = Aim::metres;
  w.least_length = least;
  w.most_length = most;
  return w;
}

double metres(const Layout& l) {
  double sum = 0;
  for (const Trench& t : l.trenches) sum += length_of(t);
  return sum;
}

void expect_legal(const Site& site, const Wishes& w, const Layout& l) {
  for (std::size_t i = 0; i < l.trenches.size(); ++i) {
    const Segment t{l.trenches[i].head, l.trenches[i].end};
    EXPECT_TRUE(trench_is_legal(site, t, w.trench_width)) << i;
    EXPECT_LE(distance(t.a, t.b), w.most_length + 1e-6);
    EXPECT_GE(distance(t.a, t.b), w.least_length - 1e-6);
    for (std::size_t k = 0; k < i; ++k)
      EXPECT_TRUE(pair_is_legal({l.trenches[k].head, l.trenches[k].end}, t, w));
  }
}

// 60 m by 40 m, setbacks 3 m: 54 m along is open, half of a 2 ft header trench at the head is taken off it.
TEST(FreeLengths, OnAnOpenLotEachTrenchIsAsLongAsTheLot) {
  const Site site = lot_of({{0, 0}, {60, 0}, {60, 40}, {0, 40}});
  Wishes w = wishes(4, 15, 60);
  w.direction = 0;  // aslant they would be longer still
  const Layout l = make_layout(site, w, coil_of(30.48));
  ASSERT_EQ(l.trenches.size(), 4u);
  EXPECT_NEAR(metres(l), 4 * (54 - 0.3048), 4 * 0.12);  // lengths are sought to 0.1 m
  expect_legal(site, w, l);
}

TEST(FreeLengths, TheBoundHolds) {
  const Site site = lot_of({{0, 0}, {60, 0}, {60, 40}, {0, 40}});
  const Wishes w = wishes(4, 15, 40);
  const Layout l = make_layout(site, w, coil_of(30.48));
  EXPECT_NEAR(metres(l), 4 * 40, 1e-6);
}

// A wedge: no two rows are equally long, and equal trenches leave the most of it empty.
TEST(FreeLengths, InAWedgeTheyDifferAndHoldMoreThanEqualOnes) {
  const Site site = lot_of({{0, 0}, {70, 0}, {0, 34}});
  Wishes w = wishes(5, 12, 60);
  const Layout free = make_layout(site, w, coil_of(24));
  expect_legal(site, w, free);
  double least = 1e9, most = 0;
  for (const Trench& t : free.trenches) {
    least = std::min(least, length_of(t));
    most = std::max(most, length_of(t));
    EXPECT_NEAR(t.coil.trench_length, length_of(t), 1e-3);  // each its own coil
  }
  EXPECT_GT(most, least + 2);
  for (double equal = 12; equal <= 36; equal += 2) {
    w.aim = Aim::digging;
    EXPECT_GT(metres(free), metres(make_layout(site, w, coil_of(equal)))) << equal;
  }
}

TEST(FreeLengths, TheSameAgain) {
  const Site site = lot_of({{0, 0}, {70, 0}, {0, 34}});
  const Wishes w = wishes(5, 12, 60);
  EXPECT_EQ(make_layout(site, w, coil_of(24)), make_layout(site, w, coil_of(24)));
}

}  // namespace
}  // namespace underlawn
