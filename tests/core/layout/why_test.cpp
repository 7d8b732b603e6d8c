// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/why.h"

#include <gtest/gtest.h>

#include <iostream>

#include "core/layout/judge.h"
#include "support/random_lots.h"

namespace underlawn {
namespace {

Coil coil_of(double trench_length) {
  Coil c;
  c.trench_length = trench_length;
  c.coil_length = trench_length * 8;
  return c;
}

Ring box(double left, double bottom, double right, double top) {
  return {{left, bottom}, {right, bottom}, {right, top}, {left, top}};
}

Feature feature(int id, FeatureKind kind, std::vector<Point> points, double clearance) {
  Feature f;
  f.id = id;
  f.kind = kind;
  f.points = std::move(points);
  f.trench_clearance = clearance;
  f.run_clearance = clearance;
  return f;
}

// 80 m x 60 m, setbacks 3 m, house at the lower edge, a septic tank of 7.62 m (25 ft) clearance.
Site site() {
  Site s;
  for (Point p : box(0, 0, 80, 60)) s.lot.push_back({p, 3});
  s.features.push_back(feature(1, FeatureKind::house, box(30, 4, 50, 14), 3));
  s.features.push_back(feature(2, FeatureKind::septic_tank, box(60, 20, 62, 22), 7.62));
  s.entry = EntryPoint{1, {40, 14}};
  return s;
}

Wishes wishes(int circuits) {
  Wishes w;
  w.circuits = circuits;
  w.coil_in_run = false;
  return w;
}

WhyEmpty why(const Site& s, const Wishes& w, double length, Point at) {
  return what_keeps_out(s, w, coil_of(length), make_layout(s, w, coil_of(length)), at);
}

TEST(Why, NamesWhatCoversThePlaceAndHowFarItIsShort) {
  const WhyEmpty w = why(site(), wishes(2), 20, {66, 21});  // 4 m from the tank
  ASSERT_EQ(w.reasons.size(), 1u);
  EXPECT_EQ(w.reasons[0].kind, Reason::Kind::covered);
  EXPECT_EQ(w.reasons[0].restriction, (Restriction{Restriction::Kind::feature, -1, 2}));
  EXPECT_NEAR(w.reasons[0].short_by, 3.62, 1e-9);
  EXPECT_EQ(name_of(site(), w.reasons[0].restriction), "the clearance of Septic tank 2");
}

TEST(Why, TheMostShortComesFirst) {
  Site s = site();
  s.features[1].points = box(70, 50, 72, 52);
  // (78, 51): 6 m from the tank, 2 m from the right edge: short by 1.62 and by 1.
  const WhyEmpty w = why(s, wishes(2), 20, {78, 51});
  ASSERT_EQ(w.reasons.size(), 2u);
  EXPECT_NEAR(w.reasons[0].short_by, 1.62, 1e-9);
  EXPECT_EQ(w.reasons[1].restriction, (Restriction{Restriction::Kind::setback, 1, 0}));
  EXPECT_NEAR(w.reasons[1].short_by, 1, 1e-9);
}

TEST(Why, OnAFeatureItIsShortByItsDepthTooAndOutsideIsOutside) {
  const WhyEmpty w = why(site(), wishes(2), 20, {61, 21});
  ASSERT_FALSE(w.reasons.empty());
  EXPECT_NEAR(w.reasons[0].short_by, 8.62, 1e-9);
  EXPECT_EQ(why(site(), wishes(2), 20, {-1, 5}).reasons.at(0).kind, Reason::Kind::outside);
}

// A strip 20 m x 54 m between the left setback and a no-dig area: along x nothing of 30 m can lie.
TEST(Why, NamesWhatStopsTheLongestTrenchThroughAnOpenPlace) {
  Site s = site();
  s.features.push_back(feature(3, FeatureKind::no_dig, box(23, 20, 80, 60), 0));
  s.features.push_back(feature(4, FeatureKind::no_dig, box(0, 0, 23, 35), 0));
  const WhyEmpty w = why(s, wishes(1), 40, {12, 45});
  ASSERT_FALSE(w.reasons.empty());
  for (const Reason& r : w.reasons) EXPECT_EQ(r.kind, Reason::Kind::stops_trench);
  EXPECT_LT(w.longest, 40);
  EXPECT_NEAR(w.longest, std::hypot(20, 22), 3);  // the diagonal of what is open, less for its width
  EXPECT_TRUE(std::any_of(w.reasons.begin(), w.reasons.end(),
                          [](const Reason& r) { return r.restriction.feature_id == 3; }));
}

TEST(Why, SaysThatEnoughArePlaced) {
  const Wishes w = wishes(1);
  const Layout l = make_layout(site(), w, coil_of(20));
  ASSERT_EQ(l.trenches.size(), 1u);
  const WhyEmpty far = what_keeps_out(site(), w, coil_of(20), l, {12, 52});
  ASSERT_EQ(far.reasons.size(), 1u);
  EXPECT_EQ(far.reasons[0].kind, Reason::Kind::enough);
  EXPECT_GE(far.longest_along, 20);
}

TEST(Why, NamesTheTrenchThatIsTooNear) {
  const Wishes w = wishes(1);
  const Layout l = make_layout(site(), w, coil_of(20));
  const Trench& t = l.trenches.at(0);
  const Point n = left_normal(unit(t.end - t.head));
  const Point from_house = dot(n, 0.5 * (t.head + t.end) - Point{40, 9}) > 0 ? n : -1.0 * n;
  const Point beside = 0.5 * (t.head + t.end) + 2.0 * from_house;
  const WhyEmpty by = what_keeps_out(site(), w, coil_of(20), l, beside);
  ASSERT_FALSE(by.reasons.empty());
  EXPECT_TRUE(std::any_of(by.reasons.begin(), by.reasons.end(), [&](const Reason& r) {
    return r.kind == Reason::Kind::too_near && r.trench == t.number &&
           std::abs(r.short_by - (w.spacing - 2)) < 1e-6;
  }));
}

TEST(Why, NamesAClosedSide) {
  Wishes w = wishes(1);
  w.closed = {{1, 2}};
  const WhyEmpty by = why(site(), w, 10, {20, 40});
  ASSERT_FALSE(by.reasons.empty());
  EXPECT_EQ(by.reasons[0].closed_side, 0);
  EXPECT_NEAR(by.reasons[0].short_by, 26, 1e-6);  // y = 40 beyond y = 14
  EXPECT_EQ(name_of(site(), w, by.reasons[0]), "the closed side at wall 3 of House 1");
}

// A lot so narrow that trenches can only lie along it, with setbacks of 0.2 m.
Site strip(double length, double width) {
  Site s;
  for (Point p : box(0, 0, length, width)) s.lot.push_back({p, 0.2});
  return s;
}

Trench trench(int number, Point head, Point end) {
  Trench t;
  t.number = number;
  t.head = head;
  t.end = end;
  t.width = 0.9144;
  return t;
}

Reason reason(Reason::Kind kind, bool on_it = false) {
  Reason r;
  r.kind = kind;
  r.on_it = on_it;
  return r;
}

// Everything at hand is at the heads, 10 m and more away; the place is 2 m beside the trench.
TEST(Why, BesideATrenchNothingIsNamedButThatTrench) {
  Layout l;
  l.trenches = {trench(1, {25, 30}, {45, 30}), trench(2, {25, 40}, {45, 40})};
  l.header.legs = {{{25, 10}, {25, 30}}, {{25, 30}, {25, 40}}};
  l.run.line = {{40, 14}, {40, 17}, {25, 10}};
  const WhyEmpty w = what_keeps_out(site(), wishes(3), coil_of(20), l, {35, 28});
  ASSERT_EQ(w.reasons.size(), 1u);
  EXPECT_EQ(w.reasons[0].kind, Reason::Kind::too_near);
  EXPECT_EQ(w.reasons[0].trench, 1);
  EXPECT_NEAR(w.reasons[0].short_by, 3.6576 - 2, 1e-6);
}

TEST(Why, OnATrenchThatTrenchIsNamedAndItsHeaderGoesWithIt) {
  Layout l;
  l.trenches = {trench(1, {4, 2.5}, {44, 2.5})};
  l.header.legs = {{{4, 4.5}, {4, 2.5}}};
  const WhyEmpty w = what_keeps_out(strip(45, 5), wishes(2), coil_of(40), l, {20, 2.5});
  ASSERT_EQ(w.reasons.size(), 1u);
  EXPECT_EQ(w.reasons[0].trench, 1);
  EXPECT_TRUE(w.reasons[0].on_it);
}

// A trench of 40 m over x = 44 in a lot of 60 m begins at 4 at the least and at 19.8 at the most.
TEST(Why, HeaderAndRunAreNamedWhereATrenchWouldLieAcrossThem) {
  Layout l;
  l.header.legs = {{{30, 0.5}, {30, 4.5}}};
  const auto at = [&l](double x) {
    return what_keeps_out(strip(60, 5), wishes(1), coil_of(40), l, {x, 2.5}).reasons;
  };
  EXPECT_EQ(at(44), std::vector{reason(Reason::Kind::header)});
  EXPECT_EQ(at(30), std::vector{reason(Reason::Kind::header, true)});
  l.run.line = l.header.legs[0];
  l.header.legs.clear();
  EXPECT_EQ(at(44), std::vector{reason(Reason::Kind::run)});
  EXPECT_EQ(at(30), std::vector{reason(Reason::Kind::run, true)});
}

// 2.5 m from both, of 12 ft.
TEST(Why, BetweenTwoTrenchesBothAreNamed) {
  Layout l;
  l.trenches = {trench(1, {10, 2}, {50, 2}), trench(2, {10, 7}, {50, 7})};
  const WhyEmpty w = what_keeps_out(strip(60, 9), wishes(3), coil_of(40), l, {30, 4.5});
  ASSERT_EQ(w.reasons.size(), 2u);
  for (const Reason& r : w.reasons) {
    EXPECT_EQ(r.kind, Reason::Kind::too_near);
    EXPECT_NEAR(r.short_by, 3.6576 - 2.5, 1e-6);
  }
  EXPECT_NE(w.reasons[0].trench, w.reasons[1].trench);
}

// Between the tank's clearance, to x = 12, and the area at 45 there are 33 m; the owner's wish gives way
// first.
TEST(Why, OfTwoThingsThatStopATrenchTheOneThatGoesMoreEasilyIsNamed) {
  Site s = strip(60, 5);
  s.features.push_back(feature(2, FeatureKind::septic_tank, box(4, 0, 6, 5), 6));
  s.features.push_back(feature(3, FeatureKind::no_dig, box(45, 0, 47, 5), 0));
  const WhyEmpty w = what_keeps_out(s, wishes(1), coil_of(40), {}, {20, 2.5});
  ASSERT_EQ(w.reasons.size(), 1u);
  EXPECT_EQ(w.reasons[0].kind, Reason::Kind::stops_trench);
  EXPECT_EQ(w.reasons[0].restriction.feature_id, 3);
  EXPECT_NEAR(w.reasons[0].short_by, 7, 1e-6);
  EXPECT_NEAR(w.longest_along, 33, 1e-6);
}

// Nothing can lie over a place that is covered, so nothing there is "too short": the tank keeps the strip
// free from x = 14 to 26, and a trench over x = 20, its middle, reaches the area beyond as well.
TEST(Why, WhatElseATrenchWouldRunIntoAtACoveredPlaceHasNoLength) {
  Site s = strip(60, 5);
  s.features.push_back(feature(2, FeatureKind::septic_tank, box(19.9, 0, 20.1, 5), 6));
  s.features.push_back(feature(3, FeatureKind::no_dig, box(30, 0, 60, 5), 0));
  s.features.push_back(feature(4, FeatureKind::no_dig, box(0, 0, 10, 5), 0));
  const WhyEmpty w = what_keeps_out(s, wishes(1), coil_of(40), {}, {22, 2.5});
  ASSERT_GE(w.reasons.size(), 2u);
  EXPECT_EQ(w.reasons[0].kind, Reason::Kind::covered);
  EXPECT_NEAR(w.reasons[0].short_by, 26.1 - 22, 1e-6);
  for (std::size_t i = 1; i < w.reasons.size(); ++i) {
    EXPECT_EQ(w.reasons[i].kind, Reason::Kind::stops_trench);
    EXPECT_EQ(w.reasons[i].short_by, 0);
  }
}

TEST(Why, ANameSaysHowWideItIs) {
  Site s = site();
  EXPECT_EQ(name_with_width(s, {Restriction::Kind::feature, -1, 2}, Lifted::clearance, UnitSystem::metric),
            "the 7.62 m clearance of Septic tank 2");
  EXPECT_EQ(name_with_width(s, {Restriction::Kind::setback, 1, 0}, Lifted::setback, UnitSystem::metric),
            "the 3.00 m setback of lot edge 2");
  s.features[1].trench_clearance = 0;
  EXPECT_EQ(name_with_width(s, {Restriction::Kind::feature, -1, 2}, Lifted::clearance, UnitSystem::metric),
            "Septic tank 2");
}

// A row of trenches end to end keeps 6 ft: the third's floor would begin 1 m behind the first.
TEST(Why, BehindATrenchItIsTheEndGapThatIsLacking) {
  Layout l;
  l.trenches = {trench(1, {1, 2.5}, {18.8, 2.5})};
  const WhyEmpty w = what_keeps_out(strip(60, 5), wishes(2), coil_of(40), l, {40, 2.5});
  ASSERT_EQ(w.reasons.size(), 1u);
  EXPECT_EQ(w.reasons[0].trench, 1);
  EXPECT_NEAR(w.reasons[0].short_by, 1.8288 - 1, 2e-3);
}

TEST(Why, NoHeaderReachesWhatIsNotRoutable) {
  const WhyEmpty w = what_keeps_out(strip(60, 5), wishes(1), coil_of(40), {}, {30, 2.5});
  EXPECT_EQ(w.reasons, std::vector{reason(Reason::Kind::no_header)});
}

// Free ground 21 m x 13 m: rows at 12 ft hold four; a clearance that takes the upper 4 m leaves three.
TEST(Why, ARestrictionCostsTheTrenchesThatFitWithoutIt) {
  Site s;
  for (Point p : box(0, 0, 30, 13)) s.lot.push_back({p, 0.2});
  s.features.push_back(feature(2, FeatureKind::septic_tank, box(13, 12.6, 15, 12.7), 4));
  Wishes w = wishes(4);
  const auto price = cost_of(s, w, coil_of(26), {Restriction::Kind::feature, -1, 2});
  ASSERT_TRUE(price.has_value());
  EXPECT_EQ(price->circuits, 3);
  EXPECT_EQ(price->circuits_without, 4);
  EXPECT_EQ(price->costs_circuits(), 1);
}

// Middle lines may lie from y = 0.66 to 12.34. A tree without its root zone still stands: its trunk, 1 m
// through, takes 3.71 to 5.63 of them, and of rows 12 ft apart that leaves one below and two above. With no
// tree at all there would be four.
TEST(Why, OfATreeTheRootZoneGoesAndTheTrunkStays) {
  Site s;
  for (Point p : box(0, 0, 30, 13)) s.lot.push_back({p, 0.2});
  s.features.push_back(feature(2, FeatureKind::tree, {{15, 4.67}}, 0));
  s.features.back().trunk_diameter = 1;
  s.root_zone_factor = 14;
  const auto price = cost_of(s, wishes(4), coil_of(26), {Restriction::Kind::feature, -1, 2});
  ASSERT_TRUE(price.has_value());
  EXPECT_EQ(price->lifted, Lifted::clearance);
  EXPECT_EQ(price->circuits, 0);
  EXPECT_EQ(price->circuits_without, 3);
}

// Middle lines may lie from y = 0.66 to 12.34, 12 ft apart. The area takes 2.54 to 10.46 of them and leaves
// one below and one above; with 2 m about it none is left; with no area there would be four.
Site with_area(FeatureKind kind, double clearance) {
  Site s;
  for (Point p : box(0, 0, 30, 13)) s.lot.push_back({p, 0.2});
  s.features.push_back(feature(2, kind, box(13, 3, 15, 10), clearance));
  return s;
}
constexpr Restriction kArea{Restriction::Kind::feature, -1, 2};

TEST(Why, AnEasementCannotBeMovedAndOnlyItsClearanceHasAPrice) {
  const auto bare = cost_of(with_area(FeatureKind::easement, 0), wishes(4), coil_of(26), kArea);
  ASSERT_TRUE(bare.has_value());
  EXPECT_EQ(bare->lifted, std::nullopt);
  EXPECT_EQ(bare->circuits, 2);
  EXPECT_EQ(bare->costs_circuits(), 0);
  const auto cleared = cost_of(with_area(FeatureKind::easement, 2), wishes(4), coil_of(26), kArea);
  ASSERT_TRUE(cleared.has_value());
  EXPECT_EQ(cleared->lifted, Lifted::clearance);
  EXPECT_EQ(cleared->circuits, 0);
  EXPECT_EQ(cleared->circuits_without, 2);
}

TEST(Why, ANoDigAreaIsGivenUpWholeWhereThatGainsMoreThanItsClearance) {
  const Site s = with_area(FeatureKind::no_dig, 2);
  const auto price = cost_of(s, wishes(4), coil_of(26), kArea);
  ASSERT_TRUE(price.has_value());
  EXPECT_EQ(price->lifted, Lifted::whole);
  EXPECT_EQ(price->circuits_without, 4);
  EXPECT_EQ(name_of(s, kArea, *price->lifted), "No-dig area 2");
}

TEST(Why, OfANoDigAreaTheClearanceAloneGoesWhereThatIsAsGood) {
  Site s = with_area(FeatureKind::no_dig, 4);
  s.features[0].points = box(13, 12.6, 15, 12.7);
  const auto price = cost_of(s, wishes(4), coil_of(26), kArea);
  ASSERT_TRUE(price.has_value());
  EXPECT_EQ(price->lifted, Lifted::clearance);
  EXPECT_EQ(price->circuits, 3);
  EXPECT_EQ(price->circuits_without, 4);
  EXPECT_EQ(name_of(s, kArea, *price->lifted), "the clearance of No-dig area 2");
}

TEST(Why, WhatStandsOnTheLotStays) {
  for (FeatureKind kind : {FeatureKind::house, FeatureKind::drive, FeatureKind::septic_tank,
                           FeatureKind::drain_field, FeatureKind::reserve_field}) {
    const auto price = cost_of(with_area(kind, 2), wishes(4), coil_of(26), kArea);
    ASSERT_TRUE(price.has_value());
    EXPECT_EQ(price->lifted, Lifted::clearance) << kind_key(kind);
    EXPECT_EQ(price->circuits_without, 2) << kind_key(kind);
  }
}

TEST(Why, ALotLineWithoutASetbackCannotBeMoved) {
  Site s = with_area(FeatureKind::easement, 0);
  s.lot[0].setback = 0;
  const auto line = cost_of(s, wishes(4), coil_of(26), {Restriction::Kind::setback, 0, 0});
  ASSERT_TRUE(line.has_value());
  EXPECT_EQ(line->lifted, std::nullopt);
  const auto setback = cost_of(s, wishes(4), coil_of(26), {Restriction::Kind::setback, 1, 0});
  EXPECT_EQ(setback->lifted, Lifted::setback);
}

// What the plan's own count names says the same: two more without the clearance, not the four without a tank.
TEST(Why, WhatCostsTrenchesIsTheClearanceNotTheThing) {
  const Layout l = make_layout(with_area(FeatureKind::septic_tank, 2), wishes(4), coil_of(26));
  ASSERT_EQ(l.costs.size(), 1u);
  EXPECT_EQ(l.costs[0], (RestrictionCost{kArea, 2}));
  const Layout wish = make_layout(with_area(FeatureKind::no_dig, 2), wishes(4), coil_of(26));
  ASSERT_EQ(wish.costs.size(), 1u);
  EXPECT_EQ(wish.costs[0], (RestrictionCost{kArea, 4}));
  EXPECT_TRUE(make_layout(with_area(FeatureKind::easement, 0), wishes(4), coil_of(26)).costs.empty());
}

Feature across_a_strip(FeatureKind kind) {
  switch (shape_of(kind)) {
    case FeatureShape::area:
      return feature(2, kind, box(29, 0.5, 31, 4.5), 3);
    case FeatureShape::line:
      return feature(2, kind, {{30, 0}, {30, 5}}, 3);
    case FeatureShape::point:
      break;
  }
  Feature f = feature(2, kind, {{30, 2.5}}, 3);
  f.trunk_diameter = 0.1;  // a root zone of 1.8 m, less than the clearance
  return f;
}

// A lot 60 m x 5 m with one thing in its middle, 3 m about it kept free, and trenches of 40 m.
class WhyEveryKind : public testing::TestWithParam<int> {
 protected:
  WhyEveryKind() {
    for (Point p : box(0, 0, 60, 5)) site_.lot.push_back({p, 0.2});
    site_.features.push_back(across_a_strip(static_cast<FeatureKind>(GetParam())));
  }
  Site site_;
};

TEST_P(WhyEveryKind, CoversThePlaceBesideIt) {
  const double edge = shape_of(site_.features[0].kind) == FeatureShape::area ? 29 : 30;
  const WhyEmpty w = why(site_, wishes(1), 40, {edge - 2, 2.5});
  ASSERT_EQ(w.reasons.size(), 1u);
  EXPECT_EQ(w.reasons[0].kind, Reason::Kind::covered);
  EXPECT_EQ(w.reasons[0].restriction.feature_id, 2);
  EXPECT_FALSE(w.reasons[0].on_it);
  EXPECT_NEAR(w.reasons[0].short_by, 1, 1e-9);
  EXPECT_EQ(name_of(site_, wishes(1), w.reasons[0]), "the clearance of " + display_name(site_.features[0]));
}

TEST_P(WhyEveryKind, IsNamedItselfWhereThePlaceLiesOnIt) {
  const FeatureShape shape = shape_of(site_.features[0].kind);
  const WhyEmpty w = why(site_, wishes(1), 40, {30, 2.5});
  ASSERT_EQ(w.reasons.size(), 1u);
  EXPECT_EQ(w.reasons[0].on_it, shape == FeatureShape::area || site_.features[0].kind == FeatureKind::tree);
}

TEST_P(WhyEveryKind, StopsTheTrenchThroughAnOpenPlace) {
  const WhyEmpty w = why(site_, wishes(1), 40, {10, 2.5});
  ASSERT_FALSE(w.reasons.empty());
  EXPECT_TRUE(std::any_of(w.reasons.begin(), w.reasons.end(), [](const Reason& r) {
    return r.kind == Reason::Kind::stops_trench && r.restriction.feature_id == 2;
  }));
  EXPECT_LT(w.longest, 30);
}

INSTANTIATE_TEST_SUITE_P(, WhyEveryKind, testing::Range(0, kFeatureKinds));

bool passes(const Polyline& line, Point p) {
  for (std::size_t i = 1; i < line.size(); ++i)
    if (distance(Segment{line[i - 1], line[i]}, p) < 2e-3) return distance(line.front(), p) > 2e-3;
  return false;
}

// The lot and layout without what is named, but for one reason that may stay; header without a trench goes.
class TakenAway {
 public:
  TakenAway(const Site& site, Layout laid, const std::vector<Reason>& reasons, const Reason* stays)
      : site_(site), layout_(std::move(laid)) {
    for (const Reason& r : reasons)
      if (&r != stays) take(r);
    std::vector<Polyline> legs;
    for (auto leg = layout_.header.legs.rbegin(); leg != layout_.header.legs.rend(); ++leg) {
      const bool of_use = std::any_of(layout_.trenches.begin(), layout_.trenches.end(),
                                      [&](const Trench& t) { return passes(*leg, t.head); }) ||
                          std::any_of(legs.begin(), legs.end(),
                                      [&](const Polyline& later) { return passes(*leg, later.front()); });
      if (of_use) legs.push_back(*leg);
    }
    if (layout_.run.line.size() > 2) legs.emplace_back(layout_.run.line.begin() + 1, layout_.run.line.end());
    layout_.header.legs = legs;
    layout_.run = {};
    for (Trench& t : layout_.trenches) t.number += 1;
    layout_.trenches.insert(layout_.trenches.begin(), Trench{});
  }

  // Whether a trench of that length may lie over the place by the judge: every 5 degrees and half metre.
  bool has_room(Wishes w, double turn, double length, Point at) {
    w.circuits = 1000;
    for (int i = 0; i < 36; ++i) {
      const Point u = direction(turn + i * std::numbers::pi / 36), n = left_normal(u);
      for (double beside : {0.0, 0.45, -0.45})
        for (double from = -length; from <= 0; from += 0.5) {
          const Point p = at + beside * w.trench_width * n + from * u, q = p + length * u;
          if (judged(w, p, q) || judged(w, q, p)) return true;
        }
    }
    return false;
  }

 private:
  void take(const Reason& r) {
    if (r.kind >= Reason::Kind::no_header) return;
    if (r.kind == Reason::Kind::too_near)
      std::erase_if(layout_.trenches, [&r](const Trench& t) { return t.number == r.trench; });
    else if (r.kind == Reason::Kind::header)
      layout_.header.legs.clear();
    else if (r.kind == Reason::Kind::run)
      layout_.run = {};
    else if (r.restriction.kind == Restriction::Kind::setback)
      site_.lot[static_cast<std::size_t>(r.restriction.edge)].setback = 0;
    else
      std::erase_if(site_.features, [&r](const Feature& f) { return f.id == r.restriction.feature_id; });
  }

  bool judged(const Wishes& w, Point head, Point end) {
    layout_.trenches[0] = trench(1, head, end);
    layout_.trenches[0].width = w.trench_width;
    for (const std::string& fault : judge::faults(site_, w, layout_, distance(head, end)))
      if (fault.find("trench 1 ") != std::string::npos || fault.find("trench 1:") != std::string::npos)
        return false;
    return true;
  }

  Site site_;
  Layout layout_;
};

// On random lots: without all that is named the judge finds a place for a trench (0.6 m shorter, as it tries
// one every half metre), and with any one of them left it finds none. The second is asked where no feature
// goes with the others, as the whole of it does here and its clearance alone may be what is named; not of
// header and run, nor nearer than a quarter metre to trenches aslant, which are held off a little more than
// asked. Where none fits on the bare lot nothing is asked.
TEST(Why, WhatIsNamedIsWhatKeepsATrenchOutByTheJudgesMeasure) {
  int asked = 0, named = 0;
  for (std::uint64_t seed = 1; seed <= 8; ++seed) {
    const sample::RandomLot lot = sample::random_lot(seed);
    const double length = lot.wishes.trench_length;
    const Layout l = make_layout(lot.site, lot.wishes, coil_of(length));
    const Box box = bounds(lot_ring(lot.site));
    for (double share : {0.35, 0.7}) {
      const Point at{box.low.x + share * (box.high.x - box.low.x),
                     box.low.y + (1.1 - share) * (box.high.y - box.low.y)};
      Site bare = lot.site;
      bare.features.clear();
      for (LotCorner& c : bare.lot) c.setback = 0;
      if (!TakenAway(bare, {}, {}, nullptr).has_room(lot.wishes, l.direction, length, at)) continue;
      const auto reasons = what_keeps_out(lot.site, lot.wishes, coil_of(length), l, at).reasons;
      SCOPED_TRACE(testing::Message() << "seed " << seed << " at " << at.x << " " << at.y);
      ASSERT_FALSE(reasons.empty());
      Wishes stricter = lot.wishes;
      stricter.spacing += 0.25;
      stricter.end_gap += 0.25;
      ++asked;
      EXPECT_TRUE(
          TakenAway(lot.site, l, reasons, nullptr).has_room(lot.wishes, l.direction, length - 0.6, at));
      for (const Reason& r : reasons) {
        const bool with_feature = std::any_of(reasons.begin(), reasons.end(), [&r](const Reason& other) {
          return &other != &r && other.restriction.kind == Restriction::Kind::feature;
        });
        if (r.kind >= Reason::Kind::header || with_feature) continue;
        ++named;
        EXPECT_FALSE(TakenAway(lot.site, l, reasons, &r).has_room(stricter, l.direction, length, at))
            << static_cast<int>(r.kind) << " " << r.restriction.feature_id << " " << r.trench;
      }
    }
  }
  std::cout << asked << " places, " << named << " reasons\n";
  EXPECT_GE(asked, 8);
  EXPECT_GE(named, 4);
}

TEST(Why, ARestrictionThatOnlyLengthensTheWayCostsDigging) {
  Site s = site();
  s.features.push_back(feature(3, FeatureKind::no_dig, box(0, 20, 74, 30), 0));  // one trench fits beside it
  const auto price = cost_of(s, wishes(2), coil_of(26), {Restriction::Kind::feature, -1, 3});
  ASSERT_TRUE(price.has_value());
  EXPECT_EQ(price->costs_circuits(), 0);
  EXPECT_GT(price->costs_digging(), 5);
}

TEST(Why, WhatIsNotThereCostsNothingAndIsRefused) {
  EXPECT_FALSE(cost_of(site(), wishes(1), coil_of(20), {Restriction::Kind::feature, -1, 99}).has_value());
  EXPECT_FALSE(cost_of(site(), wishes(1), coil_of(20), {Restriction::Kind::setback, 4, 0}).has_value());
}

}  // namespace
}  // namespace underlawn
