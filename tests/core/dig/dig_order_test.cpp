// SPDX-License-Identifier: GPL-3.0-or-later
#include "dig/dig_order.h"

#include <gtest/gtest.h>

#include <set>

#include "dig/dig_words.h"
#include "dig/protection.h"
#include "plane/region.h"
#include "plane/strip.h"
#include "support/comb_field.h"

namespace underlawn {
namespace {

constexpr double kOff = 0.6096;

Feature area_of(int id, FeatureKind kind, Point low, Point high) {
  Feature f;
  f.id = id;
  f.kind = kind;
  f.points = {low, {high.x, low.y}, high, {low.x, high.y}};
  return f;
}

// Coil trenches to the east of a header, run to a house in the west, drive in the south-west.
struct Field {
  Site site;
  Layout layout;
  Wishes wishes;
  Ground ground;
  DigWishes how;

  Field(int trenches, double spacing, double south = -40, double north = 90) {
    for (Point p : {Point{-40, south}, Point{60, south}, Point{60, north}, Point{-40, north}})
      site.lot.push_back({p, 0});
    site.features.push_back(area_of(1, FeatureKind::house, {-30, -5}, {-20, 8}));
    site.features.push_back(area_of(2, FeatureKind::drive, {-38, south}, {-33, 8}));
    layout = comb_field(trenches, spacing, 0.9144, 1.8288);
  }
  DigOrder order() const {
    return make_dig_order(site, layout, make_dig(layout, wishes, ground, {}, how), wishes, ground, how);
  }
};

Region trench_of(const DigStep& s) {
  return region_of(strip_along(s.line, s.width + 2 * s.slope * s.depth));
}

Region heap_of(const DigStep& s) {
  std::vector<Region> parts;
  for (const Ring& ring : s.spoil) parts.push_back(region_of(ring));
  return unite(parts);
}

// Judges an order by areas alone: every heap lies on the lot, off what it may not lie on, off every trench
// not yet dug and off header and run, and keeps its distance from its own edge.
void judge(const Field& f, const DigOrder& order) {
  const Region lot = region_of(lot_ring(f.site));
  for (std::size_t i = 0; i < order.steps.size(); ++i) {
    const DigStep& s = order.steps[i];
    if (s.hauled) continue;
    const Region heap = heap_of(s);
    EXPECT_NEAR(area(subtract(heap, lot)), 0, 1e-3) << step_name(s);
    EXPECT_NEAR(area(intersect(heap, grown(trench_of(s), kOff - 0.01))), 0, 1e-2) << step_name(s);
    for (const Feature& other : f.site.features)
      if (other.kind != FeatureKind::drive && other.points.size() > 2) {
        EXPECT_NEAR(area(intersect(heap, region_of(other.points))), 0, 1e-3) << step_name(s);
      }
    // As much earth as was dug lies there: a triangle across, as long as the heap.
    EXPECT_NEAR(area(heap) * s.heap.height / 2, s.work.loose, 0.03 * s.work.loose) << step_name(s);
    for (std::size_t j = 0; j < order.steps.size(); ++j) {
      const DigStep& other = order.steps[j];
      if (j == i) continue;
      const double covered = area(intersect(heap, trench_of(other)));
      if (j > i || other.kind != DigKind::trench) {
        EXPECT_NEAR(covered, 0, 1e-3) << step_name(s);
      } else if (covered > 1e-3) {
        EXPECT_EQ(std::count(s.into.begin(), s.into.end(), other.trench), 1) << step_name(s);
      }
    }
  }
}

std::vector<int> coils(const DigOrder& order) {
  std::vector<int> numbers;
  for (const DigStep& s : order.steps)
    if (s.kind == DigKind::trench) numbers.push_back(s.trench);
  return numbers;
}

std::multiset<std::string> names(const DigOrder& order) {
  std::multiset<std::string> all;
  for (const DigStep& s : order.steps) all.insert(step_name(s));
  return all;
}

}  // namespace

TEST(DigOrder, ATrenchThatTheRunSharesStaysOpen) {
  for (std::size_t shared : {0u, 2u}) {
    Field f(4, 3.6576);
    ASSERT_GT(f.order().filled_early, 0) << "too close for heaps between";
    f.layout.trenches[shared].role = TrenchRole::supply;
    f.layout.run.line = {f.layout.trenches[shared].end, f.layout.trenches[shared].head};
    f.layout.run.length = 30;
    const int number = f.layout.trenches[shared].number;
    for (const DigStep& s : f.order().steps) {
      EXPECT_EQ(std::count(s.into.begin(), s.into.end(), number), 0) << step_name(s);
      EXPECT_EQ(std::count(s.filled_first.begin(), s.filled_first.end(), number), 0) << step_name(s);
    }
  }
}

TEST(DigOrder, EverythingIsDugOnceAndTheJudgeIsContent) {
  for (int trenches : {1, 2, 4, 7})
    for (double spacing : {3.6576, 4.5, 8.0}) {
      const Field f(trenches, spacing);
      const DigOrder order = f.order();
      EXPECT_EQ(names(order).size(), static_cast<std::size_t>(trenches + (trenches > 1 ? 2 : 1)));
      EXPECT_EQ(names(order).count("Supply run"), 1u);
      EXPECT_TRUE(order.complete()) << trenches << " at " << spacing;
      EXPECT_EQ(order.hauled, 0);
      judge(f, order);
      EXPECT_EQ(order, f.order());
    }
}

// At 12 ft a heap has no room between two trenches, so spoil falls into the neighbour dug before; only the
// two outer ones, with room outside, and those whose neighbour's place is free keep theirs.
TEST(DigOrder, CloseTrenchesAreFilledOneByTheOther) {
  const DigOrder order = Field(4, 3.6576).order();
  EXPECT_EQ(order.filled_early, 2);
  std::set<int> dug;
  for (const DigStep& s : order.steps) {
    for (int q : s.into) {
      EXPECT_TRUE(dug.contains(q));
      EXPECT_EQ(std::abs(q - s.trench), 1);
    }
    dug.insert(s.trench);
  }
  EXPECT_EQ(Field(4, 8).order().filled_early, 0);
}

// The machine backs away from what is open: over no trench dug before does it stand while it digs, but within
// its reach of where it begins.
TEST(DigOrder, TheMachineBacksAwayFromWhatIsOpen) {
  for (int trenches : {2, 4, 7}) {
    const Field f(trenches, 4.5);
    const DigOrder order = f.order();
    ASSERT_TRUE(order.complete());
    for (std::size_t i = 0; i < order.steps.size(); ++i)
      for (std::size_t j = 0; j < i; ++j) {
        const Polyline& line = order.steps[i].line;
        for (double at = 3; at < length(line); at += 0.2)
          EXPECT_GT(line_area_distance({place_along(line, at).at, place_along(line, at).at},
                                       strip_along(order.steps[j].line, order.steps[j].width)),
                    0.1)
              << step_name(order.steps[i]) << " over " << step_name(order.steps[j]);
      }
  }
}

// The lot ends 3 m beyond trench 1: spoil has no room there, so digging begins at the other side.
TEST(DigOrder, BeginsWhereTheFirstHeapHasRoom) {
  const DigOrder south = Field(4, 3.6576, -3, 90).order();
  ASSERT_TRUE(south.complete());
  EXPECT_EQ(coils(south), (std::vector<int>{4, 3, 2, 1}));
  const DigOrder north = Field(4, 3.6576, -40, 3 * 3.6576 + 3).order();
  ASSERT_TRUE(north.complete());
  EXPECT_EQ(coils(north), (std::vector<int>{1, 2, 3, 4}));
}

// No room at either side: some spoil finds no place, the plan says why, and hauling off mends it.
TEST(DigOrder, SaysWhyNoOrderWorksAndHaulingMendsIt) {
  Field f(4, 3.6576, -3, 3 * 3.6576 + 3);
  const DigOrder stuck = f.order();
  EXPECT_FALSE(stuck.complete());
  EXPECT_EQ(stuck.hauled, 1);
  const auto at = std::find_if(stuck.steps.begin(), stuck.steps.end(),
                               [](const DigStep& s) { return !s.no_room.empty(); });
  ASSERT_NE(at, stuck.steps.end());
  EXPECT_NE(at->no_room.find("the lot line"), std::string::npos) << at->no_room;
  f.how.haul = Haul::needed;
  const DigOrder mended = f.order();
  EXPECT_TRUE(mended.complete());
  EXPECT_EQ(mended.hauled, 1);
  EXPECT_NEAR(hauled_loose(mended), at->work.loose, 1e-9);
  judge(f, mended);
  f.how.haul = Haul::all;
  EXPECT_EQ(f.order().hauled, static_cast<int>(f.order().steps.size()));
}

TEST(DigOrder, SpoilKeepsOffSepticPartsAndGardens) {
  for (FeatureKind kind : {FeatureKind::drain_field, FeatureKind::reserve_field, FeatureKind::septic_tank,
                           FeatureKind::no_dig, FeatureKind::house}) {
    Field f(2, 10);
    f.site.features.push_back(area_of(9, kind, {5, -6}, {28, -2}));
    const DigOrder order = f.order();
    judge(f, order);
    EXPECT_TRUE(order.complete());
  }
}

TEST(DigOrder, SpoilAvoidsPavementWhereItCan) {
  Field f(1, 10);
  f.site.features.push_back(area_of(9, FeatureKind::drive, {2, 1}, {30, 12}));
  DigOrder order = f.order();
  const auto dear = [&] {
    double sum = 0;
    for (const DigStep& s : order.steps) sum += s.trench == 1 ? s.spoil_dear : 0;
    return sum;
  };
  EXPECT_NEAR(dear(), 0, 1e-6);
  // On both sides there is a drive: then it cannot be helped.
  f.site.features.push_back(area_of(10, FeatureKind::drive, {2, -12}, {30, -1}));
  order = f.order();
  EXPECT_GT(dear(), 10);
  EXPECT_EQ(order.hauled, 0);
}

// Across every way of the machine no open trench and no heap that then stands, and it comes from the drive.
TEST(DigOrder, TheMachineComesFromTheDriveAndCrossesNothingOpen) {
  for (double spacing : {3.6576, 8.0}) {
    const Field f(4, spacing);
    const DigOrder order = f.order();
    ASSERT_TRUE(order.access.has_value());
    EXPECT_TRUE(order.over_drive);
    EXPECT_NEAR(order.access->y, -40, 1e-6);
    EXPECT_NEAR(order.access->x, -35.5, 0.4);
    for (std::size_t i = 0; i < order.steps.size(); ++i) {
      const DigStep& s = order.steps[i];
      EXPECT_TRUE(s.reached) << step_name(s);
      ASSERT_GE(s.way.size(), 2u);
      for (std::size_t j = 0; j < i; ++j) {
        const DigStep& open = order.steps[j];
        bool filled = false;
        for (std::size_t k = j + 1; k < i; ++k)
          for (int q : order.steps[k].into) filled = filled || q == open.trench;
        if (filled) continue;
        EXPECT_GT(line_area_distance(s.way, strip_along(open.line, open.width)), 0.5)
            << step_name(s) << " over " << step_name(open);
      }
      EXPECT_GT(line_area_distance(s.way, f.site.features[0].points), 0.9);
    }
  }
}

// A truck of 2.6 m comes in by the drive to within the bucket's reach of every step, to load and to bring
// back; its middle keeps half its width off the house and off the trench it serves.
TEST(DigOrder, TrucksHaveAWayToWhatIsHauled) {
  Field f(4, 8);
  EXPECT_TRUE(f.order().steps[0].truck_way.empty());  // nothing is hauled
  f.how.haul = Haul::all;
  const DigOrder order = f.order();
  int ways = 0;
  for (const DigStep& s : order.steps) {
    ASSERT_TRUE(s.hauled);
    for (const Polyline* way : {&s.truck_way, &s.fill_way}) {
      if (way->empty()) continue;
      ++ways;
      EXPECT_LT(distance(way->front(), *order.access), 0.01) << step_name(s);
      EXPECT_GT(line_area_distance(*way, f.site.features[0].points), 1.29) << step_name(s);
      EXPECT_GT(line_area_distance(*way, strip_along(s.line, s.top)), kOff + 1.29) << step_name(s);
      EXPECT_LT(line_area_distance({way->back(), way->back()}, strip_along(s.line, s.top)),
                f.how.excavator.reach)
          << step_name(s);
    }
  }
  EXPECT_GT(ways, static_cast<int>(order.steps.size()));
}

// The circle stays off trenches, heaps, the lot line and the ways where there is room, and is there all the
// same where there is little.
TEST(DigOrder, PipeIsLaidDownClearOfTrenchesAndLotLine) {
  const Field wide(4, 8);
  const DigOrder order = wide.order();
  ASSERT_TRUE(order.laydown);
  const auto off = [&](const Ring& ring) { return distance(ring, *order.laydown) - order.laydown_radius; };
  for (const DigStep& s : order.steps) {
    EXPECT_GT(off(strip_along(s.line, s.top)), 1.49) << step_name(s);
    for (const Ring& heap : s.spoil) EXPECT_GT(off(heap), -0.01);
    EXPECT_GT(line_area_distance({*order.laydown, *order.laydown}, {s.way.front(), s.way.back()}), 2.5);
  }
  const Ring lot = lot_ring(wide.site);
  for (std::size_t i = 0; i < lot.size(); ++i)
    EXPECT_GT(distance(Segment{lot[i], lot[(i + 1) % lot.size()]}, *order.laydown),
              order.laydown_radius + 0.99);
}

TEST(DigOrder, AMachineTooWideForTheOnlyGapDoesNotReach) {
  Field f(2, 8);
  // A wall of no-dig ground across the lot with a gap of 3 m.
  f.site.features.push_back(area_of(8, FeatureKind::no_dig, {-12, -40}, {-10, 20}));
  f.site.features.push_back(area_of(9, FeatureKind::no_dig, {-12, 23}, {-10, 90}));
  f.layout.run = {{{-9, 0}, {0, 0}}, 9};
  EXPECT_TRUE(f.order().steps[0].reached);
  f.how.excavator.width = 3;
  EXPECT_FALSE(f.order().steps[0].reached);
  EXPECT_FALSE(f.order().complete());
}

TEST(DigOrder, SaysWhereTheMachineIsTooSmall) {
  Field f(1, 8);
  const auto all = [&](bool DigStep::*fine) {
    for (const DigStep& s : f.order().steps)
      if (s.trench == 1) return s.*fine;
    return false;
  };
  f.how.excavator.depth = 1.6;
  EXPECT_FALSE(all(&DigStep::deep_enough));
  f.how.excavator.depth = 3;
  f.how.excavator.reach = 2;
  EXPECT_FALSE(all(&DigStep::cast_reached));
  f.how.excavator.reach = 5.8;
  EXPECT_TRUE(f.order().complete());
}

TEST(DigOrder, SlopedSidesMakeWiderTopsAndHeaps) {
  Field f(1, 8);
  f.how.coil_sides = Sides::slope;
  f.ground.soil = SoilType::type_c;
  const auto coil = [&] {
    const DigOrder order = f.order();
    return *std::find_if(order.steps.begin(), order.steps.end(),
                         [](const DigStep& s) { return s.trench == 1; });
  };
  const DigStep s = coil();
  EXPECT_NEAR(s.top, 0.9144 + 2 * 1.5 * 1.8288, 1e-9);
  EXPECT_NEAR(s.work.bank, 30 * 1.8288 * (0.9144 + 1.5 * 1.8288), 1e-6);
  f.how.slope = 1.0;
  EXPECT_NEAR(coil().top, 0.9144 + 2 * 1.8288, 1e-9);
}

TEST(DigOrder, NothingOfNothing) {
  EXPECT_TRUE(make_dig_order({}, {}, {}, {}, {}, {}).steps.empty());
  Field f(2, 8);
  f.site.lot.clear();
  EXPECT_TRUE(f.order().steps.empty());
}

TEST(DigOrder, ManyTrenchesAreOrderedToo) {
  const Field f(20, 3.6576);
  const DigOrder order = f.order();
  EXPECT_EQ(order.steps.size(), 22u);
  EXPECT_TRUE(order.complete());
  judge(f, order);
}

TEST(DigOrder, LaddersStandNoFartherThanTwentyFiveFeetFromAnybody) {
  Field f(1, 8);
  const auto coil = [&] {
    const DigOrder order = f.order();
    return *std::find_if(order.steps.begin(), order.steps.end(),
                         [](const DigStep& s) { return s.trench == 1; });
  };
  EXPECT_TRUE(coil().ladders.empty());  // nobody goes in
  f.how.coil_sides = Sides::shield;
  const DigStep s = coil();
  ASSERT_FALSE(s.ladders.empty());
  for (int i = 0; i <= 100; ++i) {
    const Point p = place_along(s.line, length(s.line) * i / 100).at;
    double least = 1e9;
    for (Point ladder : s.ladders) least = std::min(least, distance(ladder, p));
    EXPECT_LE(least, 7.62 + 1e-6);
  }
}

TEST(DigWords, CompassFollowsNorth) {
  Site site;
  EXPECT_EQ(compass_word(site, {0, 1}), "north");
  EXPECT_EQ(compass_word(site, {1, 0}), "east");
  EXPECT_EQ(compass_word(site, {-1, -1}), "south-west");
  site.north = 0;  // the drawing's right points north
  EXPECT_EQ(compass_word(site, {1, 0}), "north");
  EXPECT_EQ(compass_word(site, {0, 1}), "west");
}

}  // namespace underlawn
