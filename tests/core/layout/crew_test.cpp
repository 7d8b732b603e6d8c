// SPDX-License-Identifier: GPL-3.0-or-later
// What a crew expects of a layout without being told.
#include <gtest/gtest.h>

#include <functional>

#include "layout/layout.h"
#include "layout/pipe_turns.h"
#include "layout/square_crossings.h"
#include "layout/whole.h"
#include "site/clearances.h"
#include "support/layout_parts.h"

namespace underlawn {
namespace {

using sample::box;
using sample::coil_of;
using sample::feature;
using sample::wishes;

Site site() {
  Site s;
  for (Point p : box(0, 0, 80, 80)) s.lot.push_back({p, 3});
  s.features.push_back(feature(1, FeatureKind::house, box(30, 4, 50, 14)));
  s.entry = EntryPoint{1, {40, 14}};
  return s;
}

// Trenches half as long as the lot cannot face each other: the header lies on one line at right angles to
// them, and the run ends on it.
TEST(Crew, HeadsLieSideBySideWithTheHeaderAcrossThem) {
  const Layout l = make_layout(site(), wishes(4), coil_of(40));
  ASSERT_EQ(l.trenches.size(), 4u);
  const Point u = unit(l.trenches[0].end - l.trenches[0].head);
  const double at = dot(u, l.trenches[0].head);
  for (const Trench& t : l.trenches) EXPECT_NEAR(dot(u, t.head), at, 1e-6);
  for (const Polyline& leg : l.header.legs)
    for (Point p : leg) EXPECT_NEAR(dot(u, p), at, 1e-3);
  EXPECT_NEAR(dot(u, l.run.line.back()), at, 1e-3);
}

// The run begins at one place of the header; every other leg begins there or on a leg before it: one open
// place to make the joints of run and header in.
TEST(Crew, TheRunLeavesFromOneJointOfTheHeader) {
  const Layout l = make_layout(site(), wishes(4), coil_of(40));
  for (const Polyline& leg : l.header.legs) EXPECT_LT(distance(leg.front(), l.run.line.back()), 2e-3);
}

TEST(Crew, AShallowCrossingIsMadeSquare) {
  const Wishes w = wishes(2);
  // 20 degrees between the leg and the line.
  const double slope = std::tan(20 * std::numbers::pi / 180);
  const Polyline line = {{0, -20 * slope}, {40, 20 * slope}};
  const SquareCrossing s = squared(line, 0, {{0, 0}, {40, 0}}, w);
  ASSERT_EQ(s.line.size(), 4u);
  EXPECT_NEAR(s.angle, 20 * std::numbers::pi / 180, 1e-9);
  EXPECT_NEAR(s.line[1].x, s.line[2].x, 1e-9);
  EXPECT_NEAR(s.line[1].y, -1, 1e-9);
  EXPECT_NEAR(s.line[2].y, 1, 1e-9);
  EXPECT_GT(s.longer, 0);
  // 1.52 m through the zone at right angles (18 in and half a 2 ft trench to each side), 4.45 m at 20
  // degrees.
  EXPECT_NEAR(s.saved, 3 * 1.524 * (1 / std::sin(20 * std::numbers::pi / 180) - 1) - s.longer - 2, 1e-9);
}

TEST(Crew, ASquareCrossingStaysAsItIs) {
  EXPECT_TRUE(squared({{10, -5}, {10, 5}}, 0, {{0, 0}, {40, 0}}, wishes(2)).line.empty());
  EXPECT_TRUE(squared({{10, -5}, {10, -1}}, 0, {{0, 0}, {40, 0}}, wishes(2)).line.empty());
}

// A trench that is drawn with bends just below the utility: made square, the run would dig into
// it there; its ends are far off.
TEST(Crew, ACrossingIsNotMadeSquareOverTheBendOfACoil) {
  Site s = site();
  s.features.push_back(feature(2, FeatureKind::utility, {{0, 40}, {80, 40}}));
  const Wishes w = wishes(1);
  Whole whole;
  whole.field = {{{22, 20}, {38, 20}}};
  const Polyline run = {{10, 30}, {10, 33}, {50, 47}};
  whole.connection.run.line = run;
  square_up_crossings(s, w, whole);
  EXPECT_EQ(whole.connection.run.line.size(), 5u);
  whole.connection.run.line = run;
  whole.bends = {{{29, 38.4}, {33, 38.4}}};
  square_up_crossings(s, w, whole);
  EXPECT_EQ(whole.connection.run.line, run);
}

// From the house to a trench that is locked at the left, above a no-dig area: straight there the run would
// meet the line, which rises steeply to the right, at some 45 degrees.
TEST(Crew, RunsCrossUtilitiesAtRightAnglesWhereABendOrTwoMakesItSo) {
  Site s = site();
  s.features.push_back(feature(2, FeatureKind::utility, {{29, 10}, {44, 50}}));
  s.features.push_back(feature(3, FeatureKind::no_dig, box(0, 0, 29, 40)));
  Wishes w = wishes(1);
  w.locked = {{{28, 44}, {8, 44}}};
  const Layout l = make_layout(s, w, coil_of(20));
  ASSERT_EQ(l.crossings.size(), 1u);
  EXPECT_EQ(l.crossings[0].feature_id, 2);
  EXPECT_NEAR(l.crossings[0].angle, std::numbers::pi / 2, 1e-3);
}

double inside(const Polyline& line, const std::function<bool(Point)>& in) {
  double sum = 0;
  for (std::size_t i = 1; i < line.size(); ++i)
    for (int k = 0; k < 400; ++k) {
      const Point p = line[i - 1] + ((k + 0.5) / 400) * (line[i] - line[i - 1]);
      if (in(p)) sum += distance(line[i - 1], line[i]) / 400;
    }
  return sum;
}

// A drain field and a root zone right on the straight way.
TEST(Crew, TheRunGoesUnderNoDrainFieldAndThroughNoRootZone) {
  Site s = site();
  s.features.push_back(feature(2, FeatureKind::drain_field, box(30, 28, 50, 34)));
  s.features.push_back(feature(3, FeatureKind::tree, {{22, 24}}));
  const Layout l = make_layout(s, wishes(3), coil_of(25));
  ASSERT_FALSE(l.run.line.empty());
  std::vector<Polyline> lines = l.header.legs;
  lines.push_back(l.run.line);
  const double root = root_zone_radius(s, s.features[2]);
  for (const Polyline& line : lines) {
    EXPECT_EQ(inside(line, [&](Point p) { return contains(s.features[1].points, p); }), 0);
    EXPECT_EQ(inside(line, [&](Point p) { return distance(p, {22, 24}) < root; }), 0);
  }
}

// The entry point is in the upper wall, the only ground for trenches below the house: the run has to go round
// it, and does not hug the wall at its clearance of 2 ft.
TEST(Crew, TheRunKeepsAStepFromTheFooting) {
  Site s = site();
  s.features[0].points = box(30, 44, 50, 54);
  s.features.push_back(feature(2, FeatureKind::no_dig, box(0, 58, 80, 80)));
  s.entry = EntryPoint{1, {40, 54}};
  const Layout l = make_layout(s, wishes(2), coil_of(25));
  ASSERT_GT(l.run.line.size(), 2u);
  const double beside = inside(l.run.line, [&](Point p) { return distance(s.features[0].points, p) < 1.2; });
  EXPECT_LT(beside, 4);
}

// By hand for 1-1/4 in DR 11, 42.2 mm and 25 times that, 1.054 m, in a trench of 2 ft: cos(t/2) = 1 -
// 0.567/1.054, t = 125 degrees; a right angle takes 1.054 m of each leg.
TEST(Crew, APipeTurnsInATrenchAsFarAsItsLeastRadiusLets) {
  const auto pipe = find_pipe("1-1/4 in DR 11");
  ASSERT_TRUE(pipe.has_value());
  const auto turned = [](double degrees) {
    return Polyline{{0, 0}, {10, 0}, Point{10, 0} + 10 * direction(degrees * std::numbers::pi / 180)};
  };
  EXPECT_EQ(turns_too_tight(turned(90), 0.6096, *pipe), 0);
  EXPECT_EQ(turns_too_tight(turned(120), 0.6096, *pipe), 0);
  EXPECT_EQ(turns_too_tight(turned(130), 0.6096, *pipe), 1);
  EXPECT_EQ(turns_too_tight({{0, 0}, {10, 0}, {10, 2.2}, {20, 2.2}}, 0.6096, *pipe), 0);
  EXPECT_EQ(turns_too_tight({{0, 0}, {10, 0}, {10, 2.0}, {20, 2.0}}, 0.6096, *pipe), 1);
}

}  // namespace
}  // namespace underlawn
