// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/layout.h"

#include <gtest/gtest.h>

#include <numbers>

#include "layout/legality.h"
#include "support/layout_parts.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

using sample::box;
using sample::feature;

Coil coil_of(double trench_length) {
  Coil c = sample::coil_of(trench_length);
  c.pitch = 0.4;
  return c;
}

Site lot(const Ring& ring, double setback) {
  Site s;
  for (Point p : ring) s.lot.push_back({p, setback});
  return s;
}

// 60 m x 50 m, house at the lower edge, entry point in its upper wall.
Site plain_site() {
  Site s = lot(box(0, 0, 60, 50), 3);
  s.features.push_back(feature(1, FeatureKind::house, box(20, 4, 40, 12)));
  s.entry = EntryPoint{1, {30, 12}};
  return s;
}

bool has_trouble(const Layout& l, const std::string& code) {
  for (const Trouble& t : l.troubles)
    if (t.code == code) return true;
  return false;
}

bool near(Point a, Point b) {
  return distance(a, b) < 1e-3;
}

TEST(Layout, PlacesEqualTrenchesSideBySideAndJoinsEveryHead) {
  const Layout l = make_layout(plain_site(), Wishes{}, coil_of(30));
  ASSERT_EQ(l.trenches.size(), 4u);
  EXPECT_TRUE(l.troubles.empty());
  EXPECT_TRUE(near(l.run.line.front(), {30, 12}));
  for (const Trench& t : l.trenches) {
    EXPECT_NEAR(distance(t.head, t.end), 30, 1e-6);
    bool joined = false;
    for (const Polyline& leg : l.header.legs)
      for (std::size_t i = 1; i < leg.size(); ++i)
        joined = joined || distance(Segment{leg[i - 1], leg[i]}, t.head) < 1e-3;
    EXPECT_TRUE(joined || near(l.run.line.back(), t.head)) << "trench " << t.number;
  }
}

TEST(Layout, LegsOfTheHeaderStartOnTheRunOrOnAnEarlierLeg) {
  Wishes w;
  w.circuits = 6;
  const Layout l = make_layout(plain_site(), w, coil_of(20));
  ASSERT_FALSE(l.header.legs.empty());
  for (std::size_t i = 0; i < l.header.legs.size(); ++i) {
    const Point start = l.header.legs[i].front();
    bool found = near(start, l.run.line.back());
    for (std::size_t j = 0; j < i; ++j)
      for (std::size_t k = 1; k < l.header.legs[j].size(); ++k)
        found = found || distance(Segment{l.header.legs[j][k - 1], l.header.legs[j][k]}, start) < 1e-3;
    EXPECT_TRUE(found) << "leg " << i;
  }
}

TEST(Layout, IsTheSameTwice) {
  Wishes w;
  w.circuits = 7;
  const Plan p = sample::half_acre();
  EXPECT_EQ(make_layout(p.site, w, coil_of(20)), make_layout(p.site, w, coil_of(20)));
}

// A free rectangle of 30 m x 3 spacings + one width holds exactly four, to the millimetre.
TEST(Layout, FillsALotThatTheTrenchesFitExactly) {
  Wishes w;
  w.circuits = 5;
  const double high = 3 * w.spacing + w.trench_width;
  // Half a header trench more than the coil is long: the header needs it (and a hand's breadth of room for
  // it).
  const Site s = lot(box(0, 0, 30 + w.run_width / 2 + 4.05, high + 4), 2);
  const Layout l = make_layout(s, w, coil_of(30));
  EXPECT_EQ(l.trenches.size(), 4u);
  EXPECT_EQ(l.fits, 4);
}

TEST(Layout, ReportsAsManyAsFitUpToThreeMoreThanWanted) {
  Wishes w;
  w.circuits = 2;
  EXPECT_EQ(make_layout(plain_site(), w, coil_of(20)).fits, 5);
}

TEST(Layout, RunTurnsInAnLShapedLot) {
  Site s = lot({{0, 0}, {70, 0}, {70, 18}, {18, 18}, {18, 60}, {0, 60}}, 1);
  s.features.push_back(feature(1, FeatureKind::house, box(4, 48, 14, 56)));
  s.entry = EntryPoint{1, {9, 48}};
  Wishes w;
  w.circuits = 3;
  w.coil_in_run = false;
  const Layout l = make_layout(s, w, coil_of(40));
  ASSERT_EQ(l.trenches.size(), 3u);
  ASSERT_GE(l.run.line.size(), 3u);
  EXPECT_TRUE(l.troubles.empty());
}

// Common practice, no source: where five coils are wanted and the supply trench is long enough, four trenches
// in the field do.
TEST(Layout, PutsTheFifthCoilInALongSupplyTrench) {
  Site s = lot(box(0, 0, 40, 110), 3);
  s.features.push_back(feature(1, FeatureKind::house, box(12, 4, 28, 14)));
  s.features.push_back(feature(2, FeatureKind::no_dig, box(3, 16, 16, 66)));
  s.features.push_back(feature(3, FeatureKind::no_dig, box(24, 16, 37, 66)));
  s.entry = EntryPoint{1, {20, 14}};
  Wishes w;
  w.circuits = 5;
  const Layout l = make_layout(s, w, coil_of(30));
  ASSERT_EQ(l.trenches.size(), 5u);
  int field = 0;
  for (const Trench& t : l.trenches) field += t.role == TrenchRole::field;
  EXPECT_EQ(field, 4);
}

TEST(Layout, TurnedAndShiftedLotGivesTheTurnedAnswer) {
  Site s = plain_site();
  Wishes w;
  w.circuits = 6;
  const Layout straight = make_layout(s, w, coil_of(22));
  const double angle = 37 * std::numbers::pi / 180;
  const auto move = [angle](Point p) { return rotated(p, angle) + Point{123.4, -56.7}; };
  for (LotCorner& c : s.lot) c.at = move(c.at);
  for (Feature& f : s.features)
    for (Point& p : f.points) p = move(p);
  s.entry->at = move(s.entry->at);
  const Layout turned = make_layout(s, w, coil_of(22));
  EXPECT_EQ(turned.trenches.size(), straight.trenches.size());
  EXPECT_EQ(turned.fits, straight.fits);
  EXPECT_NEAR(turned.run.length + turned.header.length, straight.run.length + straight.header.length, 0.05);
}

TEST(Layout, NamesTheRestrictionThatCostsMost) {
  Site s = lot(box(0, 0, 36, 24), 1);
  // A trunk whose root zone takes the upper half of the lot.
  s.features.push_back(feature(7, FeatureKind::tree, {{18, 20}}));
  s.features[0].trunk_diameter = 0.5;
  Wishes w;
  w.circuits = 6;
  const Layout l = make_layout(s, w, coil_of(30));
  ASSERT_LT(l.trenches.size(), 6u);
  ASSERT_FALSE(l.costs.empty());
  EXPECT_EQ(l.costs.front().restriction.kind, Restriction::Kind::feature);
  EXPECT_EQ(l.costs.front().restriction.feature_id, 7);
  EXPECT_GE(l.costs.front().trenches, 2);
}

TEST(Layout, MarksACrossedUtilityWithItsHandDiggingLength) {
  Site s = plain_site();
  Feature pipe = feature(2, FeatureKind::utility, {{0, 15}, {60, 15}});
  pipe.depth = 0.75;
  pipe.trench_clearance = 1.0;
  s.features.push_back(pipe);
  Wishes w;
  const Layout l = make_layout(s, w, coil_of(30));
  ASSERT_EQ(l.crossings.size(), 1u);
  const Crossing& c = l.crossings.front();
  EXPECT_EQ(c.feature_id, 2);
  EXPECT_NEAR(c.at.y, 15, 1e-9);
  EXPECT_DOUBLE_EQ(c.utility_depth, 0.75);
  EXPECT_DOUBLE_EQ(c.trench_depth, w.run_depth);
  // Tolerance zone of 18 in each side, laonecall.com, along the slanted trench.
  EXPECT_NEAR(c.hand_dig, (18 * 0.0254 + 0.3048 * std::cos(c.angle)) / std::sin(c.angle), 1e-9);
}

TEST(Layout, SaysWhatClosesTheWayToTheHouse) {
  Site s = plain_site();
  Feature wall = feature(2, FeatureKind::utility, {{0, 16}, {60, 16}});
  wall.may_cross = false;
  wall.name = "Gas main";
  s.features.push_back(wall);
  const Layout l = make_layout(s, Wishes{}, coil_of(25));
  EXPECT_FALSE(l.trenches.empty());
  EXPECT_TRUE(l.run.line.empty());
  ASSERT_TRUE(has_trouble(l, "no_way_to_house"));
  EXPECT_NE(l.troubles.front().message().find("Gas main"), std::string::npos);
}

TEST(Layout, SaysSoWithoutAnEntryPoint) {
  Site s = plain_site();
  s.entry.reset();
  const Layout l = make_layout(s, Wishes{}, coil_of(25));
  EXPECT_EQ(l.trenches.size(), 4u);
  EXPECT_TRUE(l.run.line.empty());
  EXPECT_TRUE(has_trouble(l, "no_entry_point"));
}

TEST(Layout, BadInputIsRefusedByName) {
  const double nan = std::nan("");
  EXPECT_FALSE(make_layout(Site{}, Wishes{}, coil_of(25)).troubles.empty());
  Site broken = plain_site();
  broken.lot[1].at.x = nan;
  EXPECT_FALSE(make_layout(broken, Wishes{}, coil_of(25)).troubles.empty());
  Site two = plain_site();
  two.features[0].points.resize(2);
  EXPECT_FALSE(make_layout(two, Wishes{}, coil_of(25)).troubles.empty());
  Site setback = plain_site();
  setback.lot[0].setback = nan;
  EXPECT_FALSE(make_layout(setback, Wishes{}, coil_of(25)).troubles.empty());
  Wishes w;
  w.spacing = 0;
  EXPECT_TRUE(has_trouble(make_layout(plain_site(), w, coil_of(25)), "spacing_out_of_range"));
  EXPECT_TRUE(has_trouble(make_layout(plain_site(), Wishes{}, coil_of(nan)), "trench_length_out_of_range"));
  EXPECT_TRUE(has_trouble(make_layout(plain_site(), Wishes{}, coil_of(900)), "no_trench_fits"));
}

TEST(Layout, AnswersForNoCircuitsAndForAMillion) {
  Wishes w;
  w.circuits = 0;
  EXPECT_TRUE(make_layout(plain_site(), w, coil_of(25)).trenches.empty());
  w.circuits = 1'000'000;
  const Layout l = make_layout(plain_site(), w, coil_of(25));
  EXPECT_GT(l.trenches.size(), 5u);
  EXPECT_EQ(l.wanted, 1'000'000);
}

TEST(Layout, StopsWhenAsked) {
  std::stop_source source;
  source.request_stop();
  EXPECT_TRUE(make_layout(plain_site(), Wishes{}, coil_of(25), source.get_token()).trenches.empty());
}

}  // namespace
}  // namespace underlawn
