// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/tie_check.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "files/plan_file.h"
#include "plan/solve.h"
#include "plan/tape.h"
#include "support/sample_plans.h"

namespace underlawn {

TEST(TieCheck, SecondPairIsAnotherPairThatFindsTheSamePoint) {
  const Plan plan = sample::half_acre();
  const Outcome outcome = solve(plan);
  ASSERT_FALSE(outcome.stake_out.ties.empty());
  int found = 0;
  for (const Tie& tie : outcome.stake_out.ties) {
    const auto second = second_tie(plan.site, outcome.stake_out, tie);
    if (!second) continue;
    ++found;
    EXPECT_FALSE((second->first == tie.first && second->second == tie.second) ||
                 (second->first == tie.second && second->second == tie.first));
    EXPECT_LT(distance(point_from_tie(outcome.stake_out, *second), tie.at), 1e-6);
  }
  EXPECT_GT(found, 0);
}

// A square house of 10 m with its lower left corner at nought; stakes lie to the north of it.
TEST(TieCheck, BaseLineIsTheWallThatFacesTheStakes) {
  Site site;
  Feature house;
  house.id = 1;
  house.kind = FeatureKind::house;
  house.points = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};
  site.features = {house};
  StakeOut stakes;
  stakes.corners = house_corners(site);
  Tie tie;
  tie.at = {3, 17};
  stakes.ties = {tie};
  const auto base = base_line(site, stakes);
  ASSERT_TRUE(base.has_value());
  EXPECT_DOUBLE_EQ(base->from.at.y, 10);
  EXPECT_DOUBLE_EQ(base->to.at.y, 10);
  const Offset offset = offset_from(*base, tie.at);
  EXPECT_NEAR(std::abs(offset.off), 7, 1e-12);
  EXPECT_NEAR(offset.along, base->from.at.x == 0 ? 3 : 7, 1e-12);
}

namespace {

Feature box(int id, double left, double low, double right, double high) {
  Feature house;
  house.id = id;
  house.kind = FeatureKind::house;
  house.points = {{left, low}, {right, low}, {right, high}, {left, high}};
  return house;
}

StakeOut stakes_at(const Site& site, const std::vector<Point>& points) {
  StakeOut stakes;
  stakes.corners = house_corners(site);
  for (Point p : points) {
    Tie tie;
    tie.at = p;
    stakes.ties.push_back(tie);
  }
  return stakes;
}

// A lot of 40 m by 40 m whose upper right quarter is the neighbour's.
std::vector<LotCorner> l_shaped() {
  return {{{-10, -10}, 0}, {{30, -10}, 0}, {{30, 10}, 0}, {{10, 10}, 0}, {{10, 30}, 0}, {{-10, 30}, 0}};
}

}  // namespace

// From (0, 0): to (9, 9) on the lot, to (20, 9) on it, to (9, 29) and back to (29, 9) across the corner.
TEST(TieCheck, ATapeAcrossAnInnerCornerOfTheLotRunsOverTheNeighboursLand) {
  Site site;
  site.lot = l_shaped();
  const TapeGround ground = tape_ground(site);
  EXPECT_TRUE(stays_on_lot(ground, {0, 0}, {9, 9}));
  EXPECT_TRUE(stays_on_lot(ground, {0, 0}, {20, 9}));
  EXPECT_FALSE(stays_on_lot(ground, {9, 29}, {29, 9}));
  EXPECT_TRUE(stays_on_lot(ground, {10, 29}, {10, 10}));  // along the lot line
  EXPECT_TRUE(stays_on_lot(tape_ground(Site{}), {0, 0}, {900, 9}));
}

// A trunk of 0.6 m at (5, 0): 0.29 m off its middle the tape touches it, 0.35 m off it does not.
TEST(TieCheck, ATapeDoesNotPassThroughATrunk) {
  Site site;
  Feature tree;
  tree.id = 1;
  tree.kind = FeatureKind::tree;
  tree.points = {{5, 0}};
  tree.trunk_diameter = 0.6;
  site.features = {tree};
  const TapeGround ground = tape_ground(site);
  EXPECT_FALSE(tape_is_free(ground, {0, 0.2}, {10, 0.2}));
  EXPECT_TRUE(tape_is_free(ground, {0, 0.35}, {10, 0.35}));
}

// The house stands below, the barn above at the left; the stake lies to the right of the barn. Whatever pair
// is best by its cut, the one kept does not cross the neighbour's quarter.
TEST(TieCheck, APairOnTheLotIsTakenBeforeOneOverTheNeighboursLand) {
  Site site;
  site.lot = l_shaped();
  site.features = {box(1, 20, 0, 28, 8), box(2, -9, 10, -3, 18)};
  Layout layout;
  Trench t;
  t.number = 1;
  t.head = {5, 25};
  t.end = {5, 20};
  layout.trenches = {t};
  const StakeOut out = make_stake_out(site, layout);
  const TapeGround ground = tape_ground(site);
  ASSERT_EQ(out.ties.size(), 2u);
  for (const Tie& tie : out.ties) {
    EXPECT_GT(tie.cut, 0);
    for (const HouseCorner& c : out.corners)
      if (c.tag == tie.first || c.tag == tie.second) {
        EXPECT_TRUE(stays_on_lot(ground, c.at, tie.at)) << tie.point << c.tag;
      }
  }
}

// The stakes of a field 30 m off: the wall of 2 m faces more of them, the one of 12 m measures them better.
TEST(TieCheck, ALongWallIsTheBaseLineEvenWhereAShortOneIsNearer) {
  Site site;
  Feature house = box(1, 0, 0, 12, 8);
  house.points = {{0, 0}, {12, 0}, {12, 8}, {10, 8}, {10, 10}, {8, 10}, {8, 8}, {0, 8}};
  site.features = {house};
  const StakeOut stakes = stakes_at(site, {{1, 40}, {4, 40}, {8, 40}, {12, 40}});
  const auto base = base_line(site, stakes);
  ASSERT_TRUE(base.has_value());
  EXPECT_GT(distance(base->from.at, base->to.at), 7);
}

TEST(TieCheck, TheBaseLineIsNotDrawnOutOverTheNeighboursLandNorSquaredThroughAHouse) {
  Site site;
  site.lot = l_shaped();
  site.features = {box(1, 0, 0, 8, 6)};
  const BaseLine north{{"C", {8, 6}}, {"D", {0, 6}}};
  EXPECT_TRUE(offset_is_free(site, north, {9, 20}));
  EXPECT_FALSE(offset_is_free(site, north, {15, 20}));  // beyond the inner corner
  EXPECT_FALSE(offset_is_free(site, north, {4, -5}));   // through the house
  EXPECT_TRUE(offset_is_free(site, north, {20, 9}));    // 12 m drawn out, 3 m square, on the lot
}

TEST(TieCheck, TheEntryLiesInItsWall) {
  Site site;
  site.features = {box(1, 0, 0, 10, 10)};
  site.entry = EntryPoint{1, {3, 10}};
  const StakeOut stakes = stakes_at(site, {});
  const auto mark = entry_on_wall(site, stakes);
  ASSERT_TRUE(mark.has_value());
  EXPECT_DOUBLE_EQ(mark->from.at.y, 10);
  EXPECT_DOUBLE_EQ(mark->to.at.y, 10);
  EXPECT_NEAR(mark->from_distance + mark->to_distance, 10, 1e-12);
  EXPECT_NEAR(std::min(mark->from_distance, mark->to_distance), 3, 1e-12);
}

TEST(TieCheck, ABarnIsTapedFromTheHouseAtTwoOfItsCorners) {
  Site site;
  site.features = {box(1, 0, 0, 10, 8), box(2, 30, 20, 38, 26)};
  StakeOut stakes = stakes_at(site, {});
  const auto ties = building_ties(site, stakes);
  ASSERT_EQ(ties.size(), 2u);
  for (const Tie& tie : ties) {
    EXPECT_LT(distance(point_from_tie(stakes, tie), tie.at), 1e-6);
    EXPECT_GE(tie.at.x, 30);
  }
  EXPECT_NE(ties[0].point, ties[1].point);
}

TEST(TieCheck, CrossingsOfBuriedLinesAreStakedAndEdgesOfEasementsAreNot) {
  Site site;
  site.features = {box(1, 0, 0, 10, 8)};
  Feature line, easement;
  line.id = 2;
  line.kind = FeatureKind::utility;
  line.points = {{-20, 15}, {20, 15}};
  easement.id = 3;
  easement.kind = FeatureKind::easement;
  easement.points = {{-20, 20}, {20, 20}, {20, 24}, {-20, 24}};
  site.features.push_back(line);
  site.features.push_back(easement);
  Layout layout;
  layout.run.line = {{5, 8}, {5, 30}};
  Crossing edge, buried;
  edge.feature_id = 3;
  edge.at = {5, 20};
  buried.feature_id = 2;
  buried.at = {5, 15};
  layout.crossings = {edge, buried};
  const StakeOut out = make_stake_out(site, layout);
  ASSERT_EQ(out.ties.size(), 2u);
  EXPECT_EQ(out.ties[1].point, "X1");
  EXPECT_EQ(out.ties[1].at, (Point{5, 15}));
}

namespace {

Feature orchard(int id, double left, double low, double right, double high) {
  Feature f = box(id, left, low, right, high);
  f.kind = FeatureKind::no_dig;
  return f;
}

Layout stake_at(Point p) {
  Layout layout;
  Trench t;
  t.number = 1;
  t.head = p;
  t.end = p + Point{0, 0.5};
  layout.trenches = {t};
  return layout;
}

}  // namespace

// House below, barn to the left; over the orchard between barn and stake a tape from the barn would cut best.
TEST(TieCheck, ATapeIsPulledRoundAnOrchardWhereAnotherPairIsNearlyAsGood) {
  Site site;
  site.features = {box(1, 0, 0, 14, 8), box(2, -20, 25, -12, 31)};
  const Layout layout = stake_at({7, 28});
  const Tie through = make_stake_out(site, layout).ties.at(0);
  ASSERT_TRUE(through.first > "D" || through.second > "D");  // from the barn, where nothing stands between
  site.features.push_back(orchard(3, -8, 15, 0, 40));
  const StakeOut out = make_stake_out(site, layout);
  const TapeGround ground = tape_ground(site);
  for (const HouseCorner& c : out.corners)
    if (c.tag == out.ties[0].first || c.tag == out.ties[0].second) {
      EXPECT_TRUE(stays_off_planted(ground, c.at, out.ties[0].at)) << c.tag;
    }
  EXPECT_GT(out.ties[0].cut, kThinCut);
}

namespace {

Point corner_at(const StakeOut& out, const std::string& tag) {
  return std::ranges::find(out.corners, tag, &HouseCorner::tag)->at;
}

constexpr double kWrong = 0.001;  // m too long

// The point is staked with one first tape too long and taped from the new corners: how far those are off, of
// the mistake; of both mistakes the one that shows less.
double shown_when_staked(const StakeOut& out, const Tie& first, const Tie& second) {
  double least = 1e9;
  for (double Tie::*tape : {&Tie::first_distance, &Tie::second_distance}) {
    Tie wrong = first;
    wrong.*tape += kWrong;
    const Point staked = point_from_tie(out, wrong);
    double most = 0;
    for (const std::string& tag : {second.first, second.second}) {
      if (tag == first.first || tag == first.second) continue;
      const Point corner = corner_at(out, tag);
      most = std::max(most, std::abs(distance(corner, staked) - distance(corner, first.at)));
    }
    least = std::min(least, most / kWrong);
  }
  return least;
}

Tie pair_from(const StakeOut& out, const Tie& like, std::size_t i, std::size_t j) {
  Tie tie = like;
  tie.first = out.corners[i].tag;
  tie.second = out.corners[j].tag;
  return tie;
}

// Whether any two corners that see the point would have done.
bool any_pair_shows(const Site& site, const StakeOut& out, const Tie& first) {
  const TapeGround ground = tape_ground(site);
  const auto sees = [&](std::size_t i) {
    return distance(out.corners[i].at, first.at) <= kLongestTape &&
           tape_is_free(ground, out.corners[i].at, first.at);
  };
  for (std::size_t i = 0; i < out.corners.size(); ++i)
    for (std::size_t j = i + 1; j < out.corners.size(); ++j) {
      const bool thin = cut_angle(first.at, out.corners[i].at, out.corners[j].at) < 0.17453;  // 10 degrees
      if (sees(i) && sees(j) && !thin &&
          shown_when_staked(out, first, pair_from(out, first, i, j)) > 1.02 * kLeastShown)
        return true;
    }
  return false;
}

}  // namespace

// Against staking and taping anew, of every stake of both samples.
TEST(TieCheck, AWrongTapeShowsInTheSecondPairByHalfOrMore) {
  for (const std::string name : {"alder-lane", "kestrel-bend"}) {
    const Plan plan = load_plan(UNDERLAWN_SOURCE_DIR "/samples/" + name + ".underlawn")->value;
    const Outcome outcome = solve(plan);
    const StakeOut& out = outcome.stake_out;
    int checked = 0;
    for (const Tie& first : out.ties) {
      if (first.cut == 0) continue;  // on a wall
      const auto second = second_tie(plan.site, out, first);
      if (!second) {
        EXPECT_FALSE(any_pair_shows(plan.site, out, first)) << first.point;
        continue;
      }
      ++checked;
      const double shown = shown_when_staked(out, first, *second);
      EXPECT_GE(shown, 0.98 * kLeastShown) << first.point;
      EXPECT_NEAR(shown_in_check(out, first, *second), shown, 0.02 * shown) << first.point;
    }
    EXPECT_GT(checked, 3) << name;
  }
}

// By hand: from (0, 0) and (10, 0) to (5, 5) the tapes cross square; a tape from (5, 0) is 45 degrees off
// both, so it shows sin 45 of either's error. One from (0, 0) again shows nothing.
TEST(TieCheck, ShareShownIsThatOfTheAngles) {
  StakeOut out;
  out.corners = {{"A", {0, 0}}, {"B", {10, 0}}, {"C", {5, 0}}};
  Tie first;
  first.at = {5, 5};
  first.first = "A";
  first.second = "B";
  Tie second = first;
  second.second = "C";
  EXPECT_NEAR(shown_in_check(out, first, second), std::sqrt(0.5), 1e-12);
  EXPECT_EQ(shown_in_check(out, first, first), 0);
}

TEST(TieCheck, NoHouseNoSecondPair) {
  EXPECT_FALSE(second_tie({}, {}, {}).has_value());
  EXPECT_FALSE(base_line({}, {}).has_value());
}

}  // namespace underlawn
