// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/kept_run.h"

#include <gtest/gtest.h>

#include "layout/layout.h"

namespace underlawn {
namespace {

Site lot() {
  Site s;
  for (Point p : {Point{0, 0}, Point{60, 0}, Point{60, 50}, Point{0, 50}}) s.lot.push_back({p, 3});
  Feature house;
  house.id = 1;
  house.kind = FeatureKind::house;
  house.points = {{4, 4}, {12, 4}, {12, 12}, {4, 12}};
  s.features.push_back(house);
  s.entry = EntryPoint{1, {8, 12}};
  return s;
}

Layout laid(const Polyline& kept_run) {
  Wishes w;
  w.circuits = 3;
  w.kept_run = kept_run;
  Coil coil;
  coil.trench_length = 25;
  return make_layout(lot(), w, coil);
}

// The run with a corner put in half way, `aside` m off it.
Polyline detour(const Polyline& run, double aside) {
  Polyline out = run;
  const Point a = out[out.size() - 2], b = out.back();
  out.insert(out.end() - 1, 0.5 * (a + b) + aside * left_normal(unit(b - a)));
  return out;
}

}  // namespace

TEST(KeptRun, OneThatCostsMoreIsNotKept) {
  const Layout plain = laid({});
  ASSERT_GE(plain.run.line.size(), 2u);
  for (double aside : {-8.0, -3.0, 3.0, 8.0}) EXPECT_EQ(laid(detour(plain.run.line, aside)), plain) << aside;
}

TEST(KeptRun, WhatIsNoRunHereIsNoHint) {
  const Layout plain = laid({});
  EXPECT_EQ(laid({{8, 12}}), plain);
  EXPECT_EQ(laid({{1e6, -1e6}, {2e6, 3}}), plain);
  Polyline backwards(plain.run.line.rbegin(), plain.run.line.rend());
  EXPECT_EQ(laid(backwards), plain);
}

// To the nearer end, out of the wall as the stub goes; not to one that lies farther than a metre off.
TEST(KeptRun, ItsEndGoesWithTheHeader) {
  const Polyline stub = {{0, 0}, {0, 1}}, kept = {{0, 0}, {0, 1}, {5, 9}, {20, 9}};
  EXPECT_EQ(run_as_kept(kept, {stub}, {{20.5, 9}, {30, 9}}), (Polyline{{0, 0}, {0, 1}, {5, 9}, {20.5, 9}}));
  EXPECT_FALSE(run_as_kept(kept, {stub}, {{21.2, 9}}));
  EXPECT_FALSE(run_as_kept(kept, {{{0, 0}, {1, 0}}}, {{20, 9}}));
  EXPECT_FALSE(run_as_kept(kept, {}, {{20, 9}}));
  EXPECT_FALSE(run_as_kept({}, {stub}, {{20, 9}}));
}

TEST(KeptRun, NearIsWithinHalfAMetreBothWays) {
  const Polyline straight = {{0, 0}, {20, 0}};
  EXPECT_TRUE(lies_as_kept({{0, 0}, {10, 0.4}, {20, 0}}, straight));
  EXPECT_FALSE(lies_as_kept({{0, 0}, {10, 0.6}, {20, 0}}, straight));
  EXPECT_FALSE(lies_as_kept({{0, 0}, {15, 0}}, straight));
  EXPECT_FALSE(lies_as_kept(straight, {}));
}

}  // namespace underlawn
