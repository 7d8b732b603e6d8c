// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/stake_out.h"

#include <algorithm>
#include <limits>
#include <numbers>
#include <random>

#include "plan/tape.h"
#include "support/random_houses.h"

namespace underlawn {
namespace {

const Ring kBox = {{0, 0}, {12, 0}, {12, 8}, {0, 8}};

Site with_houses(const std::vector<Ring>& rings) {
  Site site;
  for (const Ring& ring : rings)
    site.features.push_back(sample::house_of(static_cast<int>(site.features.size()) + 1, ring));
  return site;
}

Trench trench(int number, Point head, Point end) {
  Trench t;
  t.number = number;
  t.head = head;
  t.end = end;
  return t;
}

const Tie* find_tie(const StakeOut& out, const std::string& point) {
  for (const Tie& t : out.ties)
    if (t.point == point) return &t;
  return nullptr;
}

Point corner(const StakeOut& out, const std::string& tag) {
  for (const HouseCorner& c : out.corners)
    if (c.tag == tag) return c.at;
  ADD_FAILURE() << "no corner " << tag;
  return {};
}

std::string names(const StakeOut& out) {
  std::string all;
  for (const Tie& t : out.ties) all += t.point + "; ";
  return all;
}

Layout one_trench(Point head, Point end) {
  Layout layout;
  layout.trenches = {trench(1, head, end)};
  return layout;
}

Layout random_layout(std::mt19937& random) {
  std::uniform_real_distribution<double> at(-45, 45);
  Layout layout;
  for (int i = 1; i <= 4; ++i)
    layout.trenches.push_back(trench(i, {at(random), at(random)}, {at(random), at(random)}));
  layout.header.legs = {{layout.trenches[0].head, {at(random), at(random)}, layout.trenches[1].head}};
  layout.run.line = {{0, 0}, {at(random), at(random)}, layout.header.legs[0][1]};
  return layout;
}

// The point by successive halving of the bearing from `first`: shares no formula with the one under test.
Point swing_tapes(Point first, Point second, const Tie& tie) {
  const double base = std::atan2(second.y - first.y, second.x - first.x);
  const double side = tie.left_of_base ? 1 : -1;
  double low = 0, high = std::numbers::pi;  // the farther swung, the longer the second tape
  const auto swung = [&](double angle) {
    return first + tie.first_distance * direction(base + side * angle);
  };
  for (int i = 0; i < 100; ++i) {
    const double middle = (low + high) / 2;
    (distance(swung(middle), second) < tie.second_distance ? low : high) = middle;
  }
  return swung(low);
}

}  // namespace

TEST(StakeOut, TiesHeadEndHeaderAndRunByName) {
  Layout layout = one_trench({2, 20}, {2, 50});
  layout.trenches.push_back(trench(2, {6, 20}, {6, 50}));
  layout.header.legs = {{{4, 18}, {2, 20}}, {{4, 18}, {6, 20}}};
  layout.run.line = {{6, 8}, {6, 14}, {4, 18}};
  const StakeOut out = make_stake_out(with_houses({kBox}), layout);
  EXPECT_EQ(names(out), "1 head; 1 end; 2 head; 2 end; header 1; run 1; ");
  EXPECT_EQ(find_tie(out, "run 1")->at, (Point{6, 14}));
}

TEST(StakeOut, PointsWithinACentimetreShareOneTie) {
  Layout layout = one_trench({2, 20}, {2, 50});
  layout.trenches.push_back(trench(2, {2.005, 20}, {6, 50}));
  layout.header.legs = {{{2, 20.004}, {9, 20}}};
  EXPECT_EQ(names(make_stake_out(with_houses({kBox}), layout)), "1 head, 2 head; 1 end; 2 end; header 1; ");
}

TEST(StakeOut, ATieIsTheTapedDistancesToTheCornersItNames) {
  const StakeOut out = make_stake_out(with_houses({kBox}), one_trench({6, 20}, {6, 40}));
  const Tie* tie = find_tie(out, "1 head");
  ASSERT_NE(tie, nullptr);
  EXPECT_EQ(tie->first + tie->second, "CD");
  EXPECT_DOUBLE_EQ(tie->first_distance, std::hypot(6, 12));
  EXPECT_DOUBLE_EQ(tie->second_distance, std::hypot(6, 12));
  EXPECT_NEAR(tie->cut, 2 * std::atan2(6, 12), 1e-12);
}

// Both rings are right for one of the two crossings only.
TEST(StakeOut, TheSideOfTheBaseTellsThePointFromItsMirrorImage) {
  const StakeOut out = make_stake_out(with_houses({kBox}), one_trench({6, 20}, {6, -20}));
  for (const Tie& tie : out.ties) {
    EXPECT_LT(distance(point_from_tie(out, tie), tie.at), 1e-3);
    Tie mirrored = tie;
    mirrored.left_of_base = !tie.left_of_base;
    EXPECT_GT(distance(point_from_tie(out, mirrored), tie.at), 20);
  }
}

TEST(StakeOut, EveryTieFindsItsPointAgainWithinAMillimetre) {
  std::mt19937 random(1'926);
  for (int i = 0; i < 400; ++i) {
    const StakeOut out =
        make_stake_out(with_houses({sample::random_house(random, {0, 0})}), random_layout(random));
    ASSERT_EQ(out.ties.size(), 10u);
    for (const Tie& tie : out.ties) {
      const auto found = find_point_from_tie(out, tie);
      ASSERT_TRUE(found) << tie.point;
      EXPECT_LT(distance(*found, tie.at), 1e-3) << tie.point;
      if (tie.cut > 0.01) {
        const Point swung = swing_tapes(corner(out, tie.first), corner(out, tie.second), tie);
        EXPECT_LT(distance(swung, tie.at), 1e-3) << tie.point;
      }
    }
  }
}

TEST(StakeOut, NoTapeOfASureTiePassesThroughAHouse) {
  std::mt19937 random(29);
  int sure = 0;
  for (int i = 0; i < 300; ++i) {
    const std::vector<Ring> houses = {sample::random_house(random, {0, 0}),
                                      sample::random_house(random, {28, 9})};
    const StakeOut out = make_stake_out(with_houses(houses), random_layout(random));
    for (const Tie& tie : out.ties) {
      if (tie.cut == 0) continue;
      ++sure;
      EXPECT_TRUE(tape_is_free(houses, corner(out, tie.first), tie.at)) << i << " " << tie.point;
      EXPECT_TRUE(tape_is_free(houses, corner(out, tie.second), tie.at)) << i << " " << tie.point;
      EXPECT_NE(tie.first, tie.second);
    }
  }
  EXPECT_GT(sure, 2000);
}

TEST(StakeOut, WhereTwoCornersSeeThePointTheTieIsSure) {
  std::mt19937 random(31);
  int seen_by_two = 0;
  for (int i = 0; i < 200; ++i) {
    const std::vector<Ring> houses = {sample::random_house(random, {0, 0})};
    const StakeOut out = make_stake_out(with_houses(houses), random_layout(random));
    for (const Tie& tie : out.ties) {
      const auto sees = std::count_if(out.corners.begin(), out.corners.end(), [&](const HouseCorner& c) {
        return tape_is_free(houses, c.at, tie.at);
      });
      EXPECT_EQ(tie.cut > 0, sees >= 2) << i << " " << tie.point;
      seen_by_two += sees >= 2 ? 1 : 0;
    }
  }
  EXPECT_GT(seen_by_two, 1000);
}

TEST(StakeOut, NoOtherPairThatSeesThePointIsSurer) {
  std::mt19937 random(30);
  for (int i = 0; i < 200; ++i) {
    const std::vector<Ring> houses = {sample::random_house(random, {0, 0})};
    const StakeOut out = make_stake_out(with_houses(houses), random_layout(random));
    for (const Tie& tie : out.ties) {
      const double chosen = expected_error(tie.at, corner(out, tie.first), corner(out, tie.second));
      for (const HouseCorner& a : out.corners)
        for (const HouseCorner& b : out.corners) {
          const bool reach = distance(a.at, tie.at) <= kLongestTape && distance(b.at, tie.at) <= kLongestTape;
          if (a.tag >= b.tag || !reach || !tape_is_free(houses, a.at, tie.at) ||
              !tape_is_free(houses, b.at, tie.at))
            continue;
          EXPECT_LE(chosen, expected_error(tie.at, a.at, b.at) + 1e-12) << tie.point;
        }
    }
  }
}

TEST(StakeOut, APointThatNoTwoCornersSeeIsTiedAllTheSameAndMarked) {
  // Inside the house nothing is seen along a free tape.
  const StakeOut out = make_stake_out(with_houses({kBox}), one_trench({6, 4}, {6, 30}));
  EXPECT_EQ(find_tie(out, "1 head")->cut, 0);
  EXPECT_LT(distance(point_from_tie(out, *find_tie(out, "1 head")), {6, 4}), 1e-3);
  EXPECT_GT(find_tie(out, "1 end")->cut, 0.1);
}

TEST(StakeOut, ATapeOverSixtyMetresIsTakenOnlyWithoutABetterOne) {
  const Ring barn = {{80, 100}, {110, 100}, {110, 120}, {80, 120}};
  const StakeOut near_shed = make_stake_out(with_houses({kBox, barn}), one_trench({6, 40}, {6, 170}));
  const Tie* near = find_tie(near_shed, "1 head");
  EXPECT_LE(std::max(near->first_distance, near->second_distance), kLongestTape);
  const Tie* far = find_tie(near_shed, "1 end");
  EXPECT_GT(std::max(far->first_distance, far->second_distance), kLongestTape);
  EXPECT_GT(far->cut, 0);
}

TEST(StakeOut, WithoutAHouseThereIsNothingToTapeFrom) {
  const StakeOut out = make_stake_out(Site{}, one_trench({6, 4}, {6, 30}));
  EXPECT_TRUE(out.corners.empty());
  EXPECT_TRUE(out.ties.empty());
}

TEST(StakeOut, ATieThatCannotBeIsNotAPoint) {
  const StakeOut out = make_stake_out(with_houses({kBox}), one_trench({6, 20}, {6, 40}));
  Tie tie = *find_tie(out, "1 head");
  tie.first_distance = tie.second_distance = 1;  // 12 m apart: the tapes do not meet
  EXPECT_FALSE(find_point_from_tie(out, tie));
  EXPECT_TRUE(std::isnan(point_from_tie(out, tie).x));
  tie.first = "Q";
  EXPECT_FALSE(find_point_from_tie(out, tie));
}

TEST(StakeOut, NonsenseCoordinatesDoNotStopIt) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const StakeOut out =
      make_stake_out(with_houses({{{nan, 0}, {12, 0}, {12, 8}, {0, 8}}}), one_trench({nan, 20}, {6, 1e300}));
  EXPECT_LE(out.ties.size(), 2u);
}

TEST(StakeOut, TheSameInputGivesTheSameTies) {
  std::mt19937 random(77);
  const Site site = with_houses({sample::random_house(random, {0, 0})});
  const Layout layout = random_layout(random);
  EXPECT_EQ(make_stake_out(site, layout), make_stake_out(site, layout));
}

TEST(StakeOut, EveryBendOfATrenchIsStaked) {
  Layout layout = one_trench({20, 2}, {30, 20});
  layout.trenches[0].number = 3;
  layout.trenches[0].bends = {{25, 2}, {30, 7}};
  const StakeOut out = make_stake_out(with_houses({kBox}), layout);
  EXPECT_EQ(names(out), "3 head; 3 bend 1; 3 bend 2; 3 end; ");
  const Tie* bend = find_tie(out, "3 bend 2");
  ASSERT_NE(bend, nullptr);
  EXPECT_NEAR(distance(point_from_tie(out, *bend), {30, 7}), 0, 1e-6);
}

}  // namespace underlawn
