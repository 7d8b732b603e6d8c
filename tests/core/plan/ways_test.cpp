// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/ways.h"

#include <gtest/gtest.h>

#include <numbers>

#include "core/layout/judge.h"
#include "cost/bill.h"
#include "files/plan_file.h"
#include "plan/solve.h"
#include "plan/way_words.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

const std::vector<Way>& half_acre_ways() {
  static const std::vector<Way> ways = ways_of(sample::half_acre());
  return ways;
}

Layout one_trench(Point head, Point end) {
  Layout layout;
  Trench t;
  t.head = head;
  t.end = end;
  t.width = 1;
  t.depth = 2;
  layout.trenches = {t};
  return layout;
}

}  // namespace

TEST(Ways, BeginWithThePlanAndAreAtMostSix) {
  const auto& ways = half_acre_ways();
  ASSERT_GE(ways.size(), 3u);
  EXPECT_LE(ways.size(), 1 + kMostWays);
  EXPECT_EQ(ways[0].kind, WayKind::as_planned);
  EXPECT_EQ(ways[0].wishes, sample::half_acre().wishes);
  EXPECT_EQ(ways[0].layout, solve(sample::half_acre()).layout);
}

TEST(Ways, DifferInKindAndOnTheGround) {
  const auto& ways = half_acre_ways();
  for (std::size_t i = 0; i < ways.size(); ++i) {
    EXPECT_GT(ways[i].circuits, 0) << ways[i].sentence;
    EXPECT_TRUE(ways.size() <= 4 || ways[i].holds || ways[i].circuits >= ways[0].circuits)
        << ways[i].sentence;
    if (ways[i].kind == WayKind::metres) {
      EXPECT_GT(ways[i].trench, ways[0].trench);
    }
    for (std::size_t j = 0; j < i; ++j) {
      EXPECT_NE(ways[i].kind, ways[j].kind);
      EXPECT_NE(ways[i].sentence, ways[j].sentence);
      EXPECT_FALSE(same_trenches(ways[i].layout, ways[j].layout)) << ways[i].sentence;
    }
  }
}

// By hand: at 0.03 rad off the long side of the sample's lot, middle lines 100 ft long may lie 12.0 m apart,
// between the maple's root zone with the reserve field and the setback with the birch; two and two whose
// floors keep the spacing of 12 ft need 11.89 m.
TEST(Ways, TwoGroupsOfTheSampleLotHoldItsFourTrenchesApart) {
  const Plan plan = load_plan(std::string(UNDERLAWN_SOURCE_DIR) + "/samples/alder-lane.underlawn")->value;
  const auto ways = ways_of(plan);
  const auto two =
      std::find_if(ways.begin(), ways.end(), [](const Way& w) { return w.kind == WayKind::groups; });
  ASSERT_NE(two, ways.end());
  EXPECT_EQ(judge::faults(plan.site, two->wishes, two->layout, plan.wishes.trench_length),
            std::vector<std::string>{});
  EXPECT_EQ(two->layout.groups, (std::vector{2, 2}));
  for (std::size_t i = 0; i < 2; ++i)
    for (std::size_t j = 2; j < 4; ++j) {
      const Trench &a = two->layout.trenches[i], &b = two->layout.trenches[j];
      const double apart =
          area_distance(rectangle_along({a.head, a.end}, a.width), rectangle_along({b.head, b.end}, b.width));
      EXPECT_GE(apart, plan.wishes.spacing - 2e-3);
    }
}

TEST(Ways, TakenSolveToTheSameLayoutAndFigures) {
  for (const Way& way : half_acre_ways()) {
    Plan plan = sample::half_acre();
    plan.wishes = way.wishes;
    const Outcome o = solve(plan);
    EXPECT_EQ(o.layout, way.layout) << way.sentence;
    EXPECT_EQ(o.bill->price, way.cost) << way.sentence;
    EXPECT_EQ(o.dig.total.bank, way.bank) << way.sentence;
    ASSERT_EQ(o.temperatures != nullptr, way.coldest.has_value());
    if (!way.coldest) continue;
    EXPECT_EQ(o.temperatures->simulation.coldest, *way.coldest) << way.sentence;
  }
}

TEST(Ways, ThatHoldComeFirstAndTheCheapestOfThemBefore) {
  const auto& ways = half_acre_ways();
  const Plan plan = sample::half_acre();
  for (std::size_t i = 1; i < ways.size(); ++i) {
    const Way& w = ways[i];
    ASSERT_TRUE(w.coldest && w.warmest);
    EXPECT_EQ(w.holds,
              *w.coldest >= plan.thermal.coldest_allowed && *w.warmest <= plan.thermal.warmest_allowed);
    if (i == 1) continue;
    EXPECT_GE(ways[i - 1].holds, w.holds);
    if (ways[i - 1].holds && w.holds) {
      EXPECT_LE(ways[i - 1].cost, w.cost);
    }
  }
}

TEST(Ways, StopAndTellHowFarTheyAre) {
  double last = -1;
  std::stop_source stop;
  const auto ways = ways_of(
      sample::half_acre(),
      [&](double share, const std::string& what) {
        EXPECT_GE(share, last);
        EXPECT_FALSE(what.empty());
        last = share;
        if (share >= 0.1) stop.request_stop();
      },
      stop.get_token());
  EXPECT_TRUE(ways.empty());
  EXPECT_GE(last, 0.1);
  EXPECT_LT(last, 1);
}

TEST(Ways, OfNothingDrawnAreNone) {
  EXPECT_TRUE(ways_of(sample::empty()).empty());
  Plan bad = sample::half_acre();
  bad.wishes.trench_depth = -1;
  EXPECT_TRUE(ways_of(bad).empty());
}

TEST(Ways, OnALotWhereNothingFitsOnlyShowWhatLaysSomething) {
  const auto ways = ways_of(sample::tiny_lot());
  ASSERT_FALSE(ways.empty());
  EXPECT_EQ(ways[0].circuits, 0);
  for (std::size_t i = 1; i < ways.size(); ++i) EXPECT_GT(ways[i].circuits, 0);
}

TEST(SameTrenches, AreWithinAMetreEitherWayRound) {
  const Layout a = one_trench({0, 0}, {30, 0});
  EXPECT_TRUE(same_trenches(a, one_trench({0.6, 0.6}, {30, 0.9})));
  EXPECT_TRUE(same_trenches(a, one_trench({30, 0}, {0, 0})));
  EXPECT_FALSE(same_trenches(a, one_trench({0, 1.1}, {30, 0})));
  Layout deeper = a;
  deeper.trenches[0].depth = 2.6;
  EXPECT_FALSE(same_trenches(a, deeper));
  EXPECT_FALSE(same_trenches(a, Layout{}));
}

// North up: a line along x runs from west to east; one at 45 degrees to the x axis from south-west.
TEST(WayWords, NameTheCompassByTheSitesNorth) {
  Site site;
  EXPECT_EQ(compass_word(site, {0, 1}), "north");
  EXPECT_EQ(compass_word(site, {1, 0}), "east");
  EXPECT_EQ(compass_word(site, {-1, -1}), "south-west");
  EXPECT_EQ(compass_line(site, 0), "from east to west");
  EXPECT_EQ(compass_line(site, std::numbers::pi / 2), "from north to south");
  EXPECT_EQ(compass_line(site, std::numbers::pi / 4), "from north-east to south-west");
  site.north = 0;
  EXPECT_EQ(compass_word(site, {1, 0}), "north");
}

}  // namespace underlawn
