// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/groups.h"

#include <gtest/gtest.h>

#include <iostream>
#include <map>

#include "core/layout/judge.h"
#include "layout/header_groups.h"
#include "layout/legality.h"
#include "support/exact_lots.h"
#include "support/layout_parts.h"

namespace underlawn {
namespace {

using sample::box;
using sample::coil_of;
using sample::feature;

// Ground on both sides of a house that fills the middle; entry point in its upper wall.
Site site(double width) {
  Site s;
  for (Point p : box(0, 0, width, 60)) s.lot.push_back({p, 3});
  s.features.push_back(feature(1, FeatureKind::house, box(width / 2 - 10, 4, width / 2 + 10, 14)));
  s.entry = EntryPoint{1, {width / 2, 14}};
  return s;
}

Wishes wishes(int circuits, int groups) {
  Wishes w = sample::wishes(circuits);
  w.groups = groups;
  return w;
}

double floors_apart(const Trench& a, const Trench& b) {
  return area_distance(rectangle_along({a.head, a.end}, a.width), rectangle_along({b.head, b.end}, b.width));
}

// Trenches nearer than the spacing from floor to floor are of one group.
std::vector<int> clusters(const std::vector<Trench>& trenches, double spacing) {
  std::vector<int> of(trenches.size());
  for (std::size_t i = 0; i < of.size(); ++i) of[i] = static_cast<int>(i);
  for (bool changed = true; changed;) {
    changed = false;
    for (std::size_t i = 0; i < of.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        if (of[i] != of[j] && floors_apart(trenches[i], trenches[j]) < spacing - 2e-3) {
          of[i] = of[j] = std::min(of[i], of[j]);
          changed = true;
        }
  }
  std::map<int, int> sizes;
  for (int cluster : of) ++sizes[cluster];
  std::vector<int> out;
  for (const auto& [cluster, size] : sizes) out.push_back(size);
  std::sort(out.begin(), out.end());
  return out;
}

bool on(const Polyline& line, Point p) {
  for (std::size_t i = 1; i < line.size(); ++i)
    if (distance(Segment{line[i - 1], line[i]}, p) < 2e-3) return true;
  return false;
}

void expect_joined(const Layout& l) {
  for (std::size_t i = 0; i < l.header.legs.size(); ++i) {
    bool begins = distance(l.run.line.back(), l.header.legs[i].front()) < 2e-3;
    for (std::size_t j = 0; j < i; ++j) begins = begins || on(l.header.legs[j], l.header.legs[i].front());
    EXPECT_TRUE(begins) << "leg " << i;
  }
  for (const Trench& t : l.trenches)
    EXPECT_TRUE(distance(l.run.line.back(), t.head) < 2e-3 ||
                std::any_of(l.header.legs.begin(), l.header.legs.end(),
                            [&](const Polyline& leg) { return on(leg, t.head); }))
        << t.number;
}

TEST(Groups, AreEvenAndApartAndJoinedToOneRun) {
  for (const auto& [circuits, groups, sizes] :
       {std::tuple{6, 2, std::vector{3, 3}}, {7, 2, std::vector{3, 4}}, {6, 3, std::vector{2, 2, 2}}}) {
    const Wishes w = wishes(circuits, groups);
    const Layout l = make_layout(site(110), w, coil_of(20));
    SCOPED_TRACE(testing::Message() << circuits << " in " << groups);
    ASSERT_EQ(static_cast<int>(l.trenches.size()), circuits);
    EXPECT_EQ(clusters(l.trenches, w.spacing), sizes);
    EXPECT_TRUE(l.troubles.empty());
    ASSERT_FALSE(l.run.line.empty());
    expect_joined(l);
    for (const Trench& t : l.trenches)
      for (const Polyline& leg : l.header.legs) EXPECT_TRUE(conduit_keeps_off(leg, {t.head, t.end}, w));
  }
}

TEST(Groups, OneIsTheUsualField) {
  const Layout one = make_layout(site(110), wishes(6, 1), coil_of(20));
  EXPECT_EQ(clusters(one.trenches, wishes(6, 1).spacing).size(), 1u);
}

// Left of the house there is room for two trenches of 12 m, to its right for many.
TEST(Groups, AreAsEvenAsTheRoomAllows) {
  Site s = site(90);
  Feature shut;
  shut.id = 2;
  shut.kind = FeatureKind::no_dig;
  shut.points = box(14, 3, 50, 60);
  shut.trench_clearance = 0;
  shut.run_clearance = 0;
  Feature low = shut;
  low.id = 3;
  low.points = box(0, 0, 14, 47.5);
  s.features[0].points = box(52, 4, 70, 14);
  s.entry = EntryPoint{1, {60, 14}};
  shut.points = box(14, 0, 46, 50);
  s.features.push_back(shut);
  s.features.push_back(low);
  Wishes w = wishes(6, 2);
  const Layout l = make_layout(s, w, coil_of(12));
  EXPECT_EQ(l.trenches.size(), 6u);
  EXPECT_EQ(clusters(l.trenches, w.spacing).size(), 2u);
  expect_joined(l);
}

// Middle lines may lie from y = 0.66 to 12.34, which is room for four rows 12 ft apart (10.97 m); two groups
// of two whose floors keep 12 ft too would need 11.89 m, and a group of one and one of three as much.
TEST(Groups, LieAsCloseAsTwoTrenchesMayWhereThereIsNoMoreRoom) {
  Site s;
  for (Point p : box(0, 0, 30, 13)) s.lot.push_back({p, 0.2});
  const Wishes w = wishes(4, 2);
  const Layout l = make_layout(s, w, coil_of(24));
  EXPECT_EQ(l.trenches.size(), 4u);
  EXPECT_EQ(l.groups, (std::vector{2, 2}));
  EXPECT_EQ(judge::faults(s, w, l, 24), std::vector<std::string>{});
}

// Half a metre more and they lie apart, each against its side of the lot.
TEST(Groups, LieApartWhereThereIsJustTheRoom) {
  Site s;
  for (Point p : box(0, 0, 30, 13.5)) s.lot.push_back({p, 0.2});
  const Wishes w = wishes(4, 2);
  const Layout l = make_layout(s, w, coil_of(24));
  ASSERT_EQ(l.trenches.size(), 4u);
  EXPECT_EQ(clusters(l.trenches, w.spacing), (std::vector{2, 2}));
  EXPECT_EQ(judge::faults(s, w, l, 24), std::vector<std::string>{});
}

// Optima of one field by Cbc, a bound on groups of one direction too; headers may take some room of them.
TEST(Groups, HoldNearlyAsManyAsTheBestSingleField) {
  int ours = 0, best = 0, split = 0, lots = 0;
  for (sample::ExactLot& lot :
       sample::exact_lots(std::string(UNDERLAWN_SOURCE_DIR) + "/tests/files/exact_lots.txt")) {
    if (lot.most < 2) continue;
    lot.wishes.groups = 2;
    lot.wishes.circuits = lot.most;
    const Layout l = make_layout(lot.site, lot.wishes, lot.coil);
    EXPECT_EQ(judge::faults(lot.site, lot.wishes, l, lot.coil.trench_length), std::vector<std::string>{})
        << lot.seed;
    ours += static_cast<int>(l.trenches.size());
    best += lot.most;
    split += l.groups.size() == 2;
    ++lots;
  }
  std::cout << ours << " of " << best << " trenches, " << split << " of " << lots << " lots in two groups\n";
  EXPECT_GE(ours, 0.99 * best);
  EXPECT_EQ(split, lots);
}

TEST(Groups, FewerThanAskedForAreSaid) {
  Site s;
  const Wishes w = wishes(2, 2);
  for (Point p : box(0, 0, 26, 5)) s.lot.push_back({p, 1});  // room for one row
  const Layout l = make_layout(s, w, coil_of(20));
  EXPECT_TRUE(std::any_of(l.troubles.begin(), l.troubles.end(),
                          [](const Trouble& t) { return t.code == "groups_missing"; }));
}

TEST(Groups, NumbersRunThroughOneGroupAfterTheOther) {
  const Wishes w = wishes(6, 2);
  const Layout l = make_layout(site(110), w, coil_of(20));
  ASSERT_EQ(l.trenches.size(), 6u);
  std::vector<Trench> first(l.trenches.begin(), l.trenches.begin() + 3);
  EXPECT_EQ(clusters(first, w.spacing), std::vector{3});
  for (std::size_t i = 0; i < 6; ++i) EXPECT_EQ(l.trenches[i].number, static_cast<int>(i) + 1);
}

TEST(Groups, LockedTrenchesAreJoinedToo) {
  Wishes w = wishes(5, 2);
  w.locked = {{{50, 30}, {70, 30}}};
  const Layout l = make_layout(site(110), w, coil_of(20));
  EXPECT_EQ(l.trenches.size(), 5u);
  expect_joined(l);
}

TEST(Groups, EachHeaderIsHeldOnALineOfItsOwn) {
  Wishes w = wishes(6, 2);
  const Layout free = make_layout(site(110), w, coil_of(20));
  ASSERT_EQ(free.groups, (std::vector{3, 3}));
  const auto line = line_of_header(free, 2);
  ASSERT_TRUE(line);
  // Moved two metres away from the trenches' ends.
  const Trench& t = free.trenches[3];
  const Point by = -2.0 * unit(t.end - t.head);
  const Segment held{line->a + by, line->b + by};
  w = with_header_line(w, 2, held);
  EXPECT_FALSE(header_is_held(w, 1));
  EXPECT_TRUE(header_is_held(w, 2));
  const Layout l = make_layout(site(110), w, coil_of(20));
  ASSERT_EQ(l.groups.size(), 2u);
  ASSERT_GT(l.trenches.size(), static_cast<std::size_t>(l.groups[0]));
  for (std::size_t i = static_cast<std::size_t>(l.groups[0]); i < l.trenches.size(); ++i)
    EXPECT_LT(distance(held, l.trenches[i].head), 2e-3) << i;
}

TEST(Groups, ALegBelongsToTheGroupWhoseHeadsItLeadsTo) {
  const Layout l = make_layout(site(110), wishes(6, 2), coil_of(20));
  ASSERT_EQ(l.groups, (std::vector{3, 3}));
  for (std::size_t leg = 0; leg < l.header.legs.size(); ++leg)
    for (std::size_t i = 0; i < l.trenches.size(); ++i) {
      if (distance(l.header.legs[leg].back(), l.trenches[i].head) >= 2e-3) continue;
      EXPECT_EQ(group_of_leg(l, leg), i < 3 ? 1 : 2) << leg;
    }
}

}  // namespace
}  // namespace underlawn
