// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "layout/amounts.h"
#include "support/layout_parts.h"

namespace underlawn {
namespace {

using sample::box;
using sample::coil_of;
using sample::feature;

// 80 m square, 3 m setbacks, a house at the lower edge with its entry point in the upper wall at (40, 14).
Site site() {
  Site s;
  for (Point p : box(0, 0, 80, 80)) s.lot.push_back({p, 3});
  s.features.push_back(feature(1, FeatureKind::house, box(30, 4, 50, 14)));
  s.entry = EntryPoint{1, {40, 14}};
  return s;
}

Wishes wishes(int circuits, Aim aim) {
  Wishes w = sample::wishes(circuits);
  w.aim = aim;
  return w;
}

Amounts amounts(const Site& s, const Wishes& w, const Layout& l) {
  return amounts_of(s, w, l);
}

TEST(Amounts, OfOneTrenchAndARunAreAsByHand) {
  Site s = site();
  s.features.push_back(feature(2, FeatureKind::tree, {{30, 45}}));
  Wishes w = wishes(1, Aim::digging);
  w.run_width = 0.5;
  w.run_depth = 1.2;
  w.bedding = 0.1;
  Layout l;
  Trench t;
  t.head = {20, 40};
  t.end = {40, 40};
  t.width = 1;
  t.depth = 1.5;
  t.coil = coil_of(20);
  l.trenches = {t};
  l.run.line = {{40, 14}, {40, 24}};
  l.run.length = 10;
  const Amounts a = amounts(s, w, l);
  EXPECT_NEAR(a.trench, 20, 1e-9);
  EXPECT_NEAR(a.dug, 20 * 1.5 + 10 * 0.5 * 1.2, 1e-9);
  EXPECT_NEAR(a.bedding, 0.1 * (20 + 5), 1e-9);
  EXPECT_NEAR(a.coil_pipe, 160, 1e-9);
  EXPECT_NEAR(a.header_pipe, 20, 1e-9);
  EXPECT_EQ(a.joints, 8);  // on each pipe run, reducer, elbow and coil in a row, and one at the house
  ASSERT_EQ(a.trees.size(), 1u);
  EXPECT_NEAR(a.trees[0].nearest, 4.5, 1e-9);  // 5 m less half a width
  // A coil trench that the run shares has sand for the run's pipes as well.
  Layout shared = l;
  shared.trenches[0].role = TrenchRole::supply;
  shared.run.length = 30;
  EXPECT_NEAR(amounts(s, w, shared).bedding, 0.1 * (20 + 20 + 5), 1e-9);
  // Heaps of 1.25 x the section at 1.5 to 1: base 2 sqrt(1.5 A); 2 ft to the edge; a metre beside.
  const double beside = 0.6096 + 1;
  const double trench = 1 + beside + 2 * std::sqrt(1.5 * 1.25 * 1.5);
  const double run = 0.5 + beside + 2 * std::sqrt(1.5 * 1.25 * 0.6);
  EXPECT_NEAR(a.lawn, 20 * trench + 10 * run, 0.01);
  const Prices p;
  EXPECT_NEAR(money_of(a, p),
              p.digging * a.dug + p.lawn * a.lawn + p.bedding * a.bedding + 160 * p.coil_pipe +
                  20 * p.header_pipe + 8 * p.joint,
              1e-6);
  EXPECT_NEAR(regret_of(a, p, 2), 2 * p.missing_circuit + p.near_tree * 5.5, 1e-6);
}

// The free rectangle holds four, to the millimetre; two are asked for.
TEST(Aim, CircuitsAreAsManyAsFit) {
  Wishes w = wishes(2, Aim::circuits);
  const double high = 3 * w.spacing + w.trench_width;
  Site s;
  for (Point p : box(0, 0, 30 + w.run_width / 2 + 4.05, high + 4)) s.lot.push_back({p, 2});
  EXPECT_EQ(make_layout(s, w, coil_of(30)).trenches.size(), 4u);
  w.aim = Aim::digging;
  EXPECT_EQ(make_layout(s, w, coil_of(30)).trenches.size(), 2u);
}

// The field lies beyond a strip where no trench may lie but the run may. Straight across it is shortest; over
// the drive beside it no lawn is torn up.
TEST(Aim, LawnSendsTheRunAlongTheDrive) {
  Site s = site();
  s.features.push_back(feature(2, FeatureKind::easement, box(0, 16, 50, 50)));
  s.features.push_back(feature(3, FeatureKind::drive, box(51, 4, 59, 50)));
  s.features.push_back(feature(4, FeatureKind::easement, box(60, 4, 80, 50)));
  const Wishes dig = wishes(2, Aim::digging), lawn = wishes(2, Aim::lawn);
  const Layout straight = make_layout(s, dig, coil_of(25)), round = make_layout(s, lawn, coil_of(25));
  ASSERT_EQ(straight.trenches.size(), 2u);
  ASSERT_EQ(round.trenches.size(), 2u);
  EXPECT_LT(amounts(s, lawn, round).lawn, amounts(s, dig, straight).lawn - 80);
  EXPECT_GT(amounts(s, lawn, round).pavement, 30 * lawn.run_width);
  EXPECT_LT(amounts(s, dig, straight).pavement, 10 * dig.run_width);
}

// A gas line between the house and the only ground for trenches ends at x = 58. Round its end is some forty
// metres more, at about 60 a metre.
TEST(Aim, CostGoesRoundACrossingThatIsDearerThanTheWay) {
  Site s = site();
  s.features.push_back(feature(2, FeatureKind::utility, {{0, 20}, {58, 20}}));
  s.features.push_back(feature(3, FeatureKind::no_dig, box(36, 24, 80, 80)));
  Wishes w = wishes(2, Aim::cost);
  w.prices.hand_crossing = 8000;
  const Layout round = make_layout(s, w, coil_of(25));
  ASSERT_EQ(round.trenches.size(), 2u);
  EXPECT_EQ(amounts(s, w, round).hand_crossings, 0);
  w.prices.hand_crossing = 50;
  const Layout across = make_layout(s, w, coil_of(25));
  EXPECT_EQ(amounts(s, w, across).hand_crossings, 1);
  EXPECT_LT(across.run.length, round.run.length - 15);
}

// The best ground by digging lies round the tree: left of x = 28 none is, and the rest is farther off. The
// run begins 20 m from the trunk.
TEST(Aim, TreesAreKeptFurtherOffThanTheirRootsAsk) {
  Site s = site();
  s.features.push_back(feature(2, FeatureKind::tree, {{52, 30}}));
  s.features.push_back(feature(3, FeatureKind::no_dig, box(0, 0, 28, 80)));
  const Layout dig = make_layout(s, wishes(3, Aim::digging), coil_of(25));
  const Layout far = make_layout(s, wishes(3, Aim::trees), coil_of(25));
  ASSERT_EQ(far.trenches.size(), 3u);
  const double near = amounts(s, wishes(3, Aim::digging), dig).trees.at(0).nearest;
  const double now = amounts(s, wishes(3, Aim::trees), far).trees.at(0).nearest;
  EXPECT_LT(near, 10);
  EXPECT_GT(now, near + 5);
  EXPECT_LT(now, 20);
}

// A trench costs more than 25 m x 1.67 m2 x 20 = 836 and less than 6000.
TEST(Aim, MixLeavesOutWhatIsDearerThanIsMissed) {
  Wishes w = wishes(3, Aim::mix);
  w.prices.missing_circuit = 500;
  const Layout few = make_layout(site(), w, coil_of(25));
  EXPECT_EQ(few.trenches.size(), 1u);
  EXPECT_EQ(few.fits >= 3, true);
  w.prices.missing_circuit = 6000;
  EXPECT_EQ(make_layout(site(), w, coil_of(25)).trenches.size(), 3u);
}

}  // namespace
}  // namespace underlawn
