// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "layout/layout.h"
#include "layout/legality.h"
#include "plan/solve.h"
#include "support/crafted.h"
#include "support/layout_parts.h"

namespace underlawn {
namespace {

using sample::box;
using sample::feature;
using sample::wishes;

Coil coil_of(double trench_length) {
  Coil c = sample::coil_of(trench_length);
  c.loop_diameter = 0.9;
  c.pitch = 0.4;
  return c;
}

// 80 m x 60 m, 3 m setbacks, a house at the lower edge with its entry point in the upper wall at (40, 14).
Site site() {
  Site s;
  for (Point p : box(0, 0, 80, 60)) s.lot.push_back({p, 3});
  s.features.push_back(feature(1, FeatureKind::house, box(30, 4, 50, 14)));
  s.entry = EntryPoint{1, {40, 14}};
  return s;
}

const Trouble* trouble(const Layout& l, const std::string& code) {
  for (const Trouble& t : l.troubles)
    if (t.code == code) return &t;
  return nullptr;
}

bool reached(const Layout& l, Point head) {
  if (!l.run.line.empty() && distance(l.run.line.back(), head) < 2e-3) return true;
  for (const Polyline& leg : l.header.legs)
    for (std::size_t i = 1; i < leg.size(); ++i)
      if (distance(Segment{leg[i - 1], leg[i]}, head) < 2e-3) return true;
  return false;
}

void expect_sound(const Layout& l, const Wishes& w) {
  for (std::size_t i = 0; i < l.trenches.size(); ++i) {
    const Trench& t = l.trenches[i];
    EXPECT_TRUE(reached(l, t.head)) << "trench " << t.number;
    for (std::size_t j = 0; j < i; ++j)
      EXPECT_TRUE(pair_is_legal({l.trenches[j].head, l.trenches[j].end}, {t.head, t.end}, w))
          << t.number << " and " << l.trenches[j].number;
    for (const Polyline& leg : l.header.legs)
      EXPECT_TRUE(conduit_keeps_off(leg, {t.head, t.end}, w)) << "header and trench " << t.number;
    EXPECT_TRUE(conduit_keeps_off(l.run.line, {t.head, t.end}, w)) << "run and trench " << t.number;
  }
}

int locked_count(const Layout& l) {
  return static_cast<int>(
      std::count_if(l.trenches.begin(), l.trenches.end(), [](const Trench& t) { return t.locked; }));
}

const Trench& the_locked(const Layout& l) {
  return *std::find_if(l.trenches.begin(), l.trenches.end(), [](const Trench& t) { return t.locked; });
}

TEST(Held, ALockedTrenchStaysWhereItIsAndTheRestIsPlacedRoundIt) {
  // Right where the search itself puts trenches; askew by 10, 45 and 90 degrees too.
  for (double degrees : {0.0, 10.0, 45.0, 90.0}) {
    Wishes w = wishes(4);
    const Point u = direction(degrees * std::numbers::pi / 180);
    w.locked = {{{42, 22}, Point{42, 22} + 25 * u}};
    const Layout l = make_layout(site(), w, coil_of(25));
    SCOPED_TRACE(degrees);
    ASSERT_EQ(l.trenches.size(), 4u);
    ASSERT_EQ(locked_count(l), 1);
    EXPECT_EQ(the_locked(l).head, w.locked[0].head);
    EXPECT_EQ(the_locked(l).end, w.locked[0].end);
    EXPECT_TRUE(l.troubles.empty());
    expect_sound(l, w);
  }
}

// What is laid stays as it is when it is locked, one trench or all of them, in one field or in two.
TEST(Held, LockingTrenchesWhereTheyLieMovesNothing) {
  for (int groups : {1, 2}) {
    Wishes w = wishes(4);
    w.groups = groups;
    const Layout laid = make_layout(site(), w, coil_of(25));
    ASSERT_EQ(laid.trenches.size(), 4u);
    for (std::size_t first = 0; first < 4; ++first)
      for (std::size_t last : {first, std::size_t{3}}) {
        SCOPED_TRACE(std::to_string(groups) + " groups, " + std::to_string(first));
        Wishes locked = w;
        for (std::size_t i = first; i <= last; ++i)
          locked.locked.push_back({laid.trenches[i].head, laid.trenches[i].end});
        Layout l = make_layout(site(), locked, coil_of(25));
        EXPECT_EQ(locked_count(l), static_cast<int>(last - first) + 1);
        for (Trench& t : l.trenches) t.locked = false;
        EXPECT_EQ(l, laid);
      }
  }
}

TEST(Held, ALockedTrenchKeepsItsDepthAndItsPipe) {
  Wishes w = wishes(3);
  w.locked = {{{20, 40}, {45, 40}, 1.2, 150}};
  const Layout l = make_layout(site(), w, coil_of(25));
  ASSERT_EQ(locked_count(l), 1);
  EXPECT_EQ(the_locked(l).depth, 1.2);
  EXPECT_NEAR(the_locked(l).coil.coil_length, 150, 1e-9);
}

TEST(Held, ALockedTrenchThatBreaksARuleStays) {
  Wishes w = wishes(2);
  w.locked = {{{-5, 40}, {20, 40}}};
  const Layout l = make_layout(site(), w, coil_of(25));
  ASSERT_EQ(l.trenches.size(), 2u);
  EXPECT_EQ(the_locked(l).head, (Point{-5, 40}));
}

TEST(Held, TheChecksSpeakOfALockedTrenchThatBreaksARule) {
  Plan plan = crafted::plan();
  plan.wishes.locked = {{{-5, 40}, {20, 40}}};
  const Outcome o = solve(plan);
  EXPECT_TRUE(std::any_of(o.findings.begin(), o.findings.end(),
                          [](const Finding& f) { return f.rule == "trench_outside_lot"; }));
}

TEST(Held, ADirectionThatIsNotAcrossTheHeadersLineIsNamed) {
  Wishes w = wishes(2);
  w.header_on = Segment{{22, 20}, {22, 55}};
  w.direction = 0;
  EXPECT_EQ(trouble(make_layout(site(), w, coil_of(25)), "direction_against_header"), nullptr);
  w.direction = 0.5;
  EXPECT_NE(trouble(make_layout(site(), w, coil_of(25)), "direction_against_header"), nullptr);
}

TEST(Held, AllCircuitsMayBeLocked) {
  Wishes w = wishes(2);
  w.locked = {{{20, 30}, {45, 30}}, {{20, 36}, {45, 36}}};
  const Layout l = make_layout(site(), w, coil_of(25));
  ASSERT_EQ(l.trenches.size(), 2u);
  EXPECT_EQ(locked_count(l), 2);
  expect_sound(l, w);
}

TEST(Held, ALockedTrenchThatIsNoneIsNamed) {
  Wishes w = wishes(2);
  w.locked = {{{20, 30}, {45, 30}}, {{20, 36}, {20.2, 36}}};
  const Layout l = make_layout(site(), w, coil_of(25));
  ASSERT_FALSE(l.troubles.empty());
  EXPECT_EQ(l.troubles[0].thing.rfind("locked trench 2", 0), 0u) << l.troubles[0].thing;
}

TEST(Held, HeadsLieOnTheLineHeldForTheHeader) {
  Wishes w = wishes(5);
  w.header_on = Segment{{22, 20}, {22, 55}};
  const Layout l = make_layout(site(), w, coil_of(25));
  ASSERT_EQ(l.trenches.size(), 5u);
  for (const Trench& t : l.trenches) {
    EXPECT_NEAR(t.head.x, 22, 1e-9);
    EXPECT_NEAR(t.head.y, t.end.y, 1e-9);
    EXPECT_GE(t.head.y, 20 - 1e-9);
    EXPECT_LE(t.head.y, 55 + 1e-9);
  }
  for (const Polyline& leg : l.header.legs)
    for (Point p : leg) EXPECT_NEAR(p.x, 22, 1e-6);
  EXPECT_TRUE(l.troubles.empty());
  expect_sound(l, w);
}

// On 9 m lie three trenches of one side (12 ft apart); of both sides no more by the gap at ends: the third
// line of heads would be at 9.15.
TEST(Held, AShortHeaderLineIsNamedWithItsWayOut) {
  Wishes w = wishes(8);
  w.header_on = Segment{{40, 25}, {40, 34}};
  const Layout l = make_layout(site(), w, coil_of(25));
  EXPECT_GE(l.trenches.size(), 3u);
  EXPECT_LT(l.trenches.size(), 8u);
  const Trouble* t = trouble(l, "held_leaves_no_room");
  ASSERT_NE(t, nullptr);
  EXPECT_EQ(t->thing, "room left by the line held for the header");
}

TEST(Held, BothSidesOfTheHeaderLineAreUsedWhereOneIsNotEnough) {
  Wishes w = wishes(6);
  w.header_on = Segment{{40, 20}, {40, 37}};  // five of one side
  const Layout l = make_layout(site(), w, coil_of(25));
  EXPECT_EQ(l.trenches.size(), 6u);
  expect_sound(l, w);
}

TEST(Held, TheRunPassesThePlacesInOrder) {
  Wishes w = wishes(3);
  w.run_by = {{60, 20}, {60, 40}};
  const Layout l = make_layout(site(), w, coil_of(25));
  ASSERT_EQ(l.trenches.size(), 3u);
  const auto at = [&](Point p) {
    for (std::size_t i = 0; i < l.run.line.size(); ++i)
      if (distance(l.run.line[i], p) < 1e-6) return static_cast<int>(i);
    return -1;
  };
  EXPECT_GT(at({60, 20}), 0);
  EXPECT_GT(at({60, 40}), at({60, 20}));
  expect_sound(l, w);
}

TEST(Held, APlaceTheRunCannotPassIsNamed) {
  Wishes w = wishes(3);
  w.run_by = {{60, 20}, {40, 8}};
  const Layout l = make_layout(site(), w, coil_of(25));
  EXPECT_EQ(l.trenches.size(), 3u);
  const Trouble* t = trouble(l, "run_by_not_reached");
  ASSERT_NE(t, nullptr);
  EXPECT_EQ(t->thing, "place 2 that the run passes");
  EXPECT_NE(t->value.find("House 1"), std::string::npos) << t->value;
}

TEST(Held, NoTrenchLiesBeyondAClosedWall) {
  Wishes w = wishes(3);
  w.closed = {{1, 2}};  // the upper wall, y = 14
  const Layout closed = make_layout(site(), w, coil_of(20));
  ASSERT_FALSE(closed.trenches.empty());
  for (const Trench& t : closed.trenches) {
    EXPECT_LE(t.head.y, 14 - w.trench_width / 2 + 2e-3);
    EXPECT_LE(t.end.y, 14 - w.trench_width / 2 + 2e-3);
  }
  EXPECT_FALSE(contains(closed.buildable, Point{40, 40}));
  EXPECT_TRUE(contains(closed.routable, Point{40, 40}));
}

TEST(Held, AClosedSideThatLeavesNoRoomIsNamed) {
  Wishes w = wishes(6);
  w.closed = {{1, 2}};
  const Layout l = make_layout(site(), w, coil_of(25));
  EXPECT_LT(l.trenches.size(), 6u);
  const Trouble* t = trouble(l, "held_leaves_no_room");
  ASSERT_NE(t, nullptr);
  EXPECT_NE(t->thing.find("closed side at wall 3"), std::string::npos) << t->thing;
}

TEST(Held, AWallThatIsNotThereCannotBeClosed) {
  for (const ClosedSide& side : {ClosedSide{7, 0}, ClosedSide{1, 4}, ClosedSide{1, -1}}) {
    Wishes w = wishes(2);
    w.closed = {side};
    const Layout l = make_layout(site(), w, coil_of(25));
    EXPECT_EQ(l.trenches.size(), 2u);
    EXPECT_NE(trouble(l, "closed_side_not_there"), nullptr);
  }
}

TEST(Held, OnlyTheDirectionHeldIsTried) {
  for (double degrees : {0.0, 37.0, 90.0, 200.0}) {
    Wishes w = wishes(3);
    w.direction = degrees * std::numbers::pi / 180;
    const Layout l = make_layout(site(), w, coil_of(25));
    ASSERT_EQ(l.trenches.size(), 3u) << degrees;
    for (const Trench& t : l.trenches)
      EXPECT_NEAR(cross(unit(t.end - t.head), direction(*w.direction)), 0, 1e-6) << degrees;
  }
}

}  // namespace
}  // namespace underlawn
