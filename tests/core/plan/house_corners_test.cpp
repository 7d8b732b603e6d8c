// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <numbers>

#include "plan/stake_out.h"
#include "support/random_houses.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

using std::numbers::pi;

Site with_house(Ring ring) {
  Site site;
  site.features = {sample::house_of(1, std::move(ring))};
  return site;
}

std::string tags(const std::vector<HouseCorner>& corners) {
  std::string all;
  for (const HouseCorner& c : corners) all += c.tag + " ";
  return all;
}

const Ring kBox = {{10, 10}, {20, 10}, {20, 16}, {10, 16}};

}  // namespace

TEST(HouseCorners, AreLetteredCounterClockwiseFromTheSouthWest) {
  const auto corners = house_corners(with_house({{20, 16}, {10, 16}, {10, 10}, {20, 10}}));
  EXPECT_EQ(tags(corners), "A B C D ");
  for (std::size_t i = 0; i < 4; ++i) EXPECT_EQ(corners[i].at, kBox[i]);
}

TEST(HouseCorners, DrawnClockwiseTheyAreTheSame) {
  Ring clockwise = kBox;
  std::reverse(clockwise.begin(), clockwise.end());
  EXPECT_EQ(house_corners(with_house(clockwise)), house_corners(with_house(kBox)));
}

TEST(HouseCorners, SouthWestIsTheSitesAndNotThePapers) {
  Site site = with_house(kBox);
  site.north = 0;  // north is to the right: south-west is up and to the left
  EXPECT_EQ(house_corners(site)[0].at, (Point{10, 16}));
  site.north = -pi / 2;  // north is down
  EXPECT_EQ(house_corners(site)[0].at, (Point{20, 16}));
  site.north = pi;  // north is to the left
  EXPECT_EQ(house_corners(site)[0].at, (Point{20, 10}));
}

TEST(HouseCorners, AHouseOnItsCornerStartsAtTheMoreSoutherly) {
  const auto corners = house_corners(with_house({{10, 0}, {20, 10}, {10, 20}, {0, 10}}));
  EXPECT_EQ(corners[0].at, (Point{10, 0}));
}

TEST(HouseCorners, PointsOfAStraightWallAndRepeatsAreNoCorners) {
  const auto corners = house_corners(
      with_house({{10, 10}, {15, 10}, {15, 10.001}, {20, 10}, {20, 10}, {20, 16}, {10, 16}, {10, 10}}));
  EXPECT_EQ(tags(corners), "A B C D ");
}

TEST(HouseCorners, AnLHasItsInnerCornerToo) {
  const auto corners = house_corners(with_house({{0, 0}, {20, 0}, {20, 8}, {10, 8}, {10, 16}, {0, 16}}));
  EXPECT_EQ(tags(corners), "A B C D E F ");
}

TEST(HouseCorners, ASecondHouseGoesOnWithTheNextLetter) {
  Site site = with_house(kBox);
  site.features.push_back(sample::house_of(2, {{40, 0}, {46, 0}, {46, 6}, {40, 6}}));
  EXPECT_EQ(tags(house_corners(site)), "A B C D E F G H ");
  EXPECT_EQ(house_corners(site)[4].at, (Point{40, 0}));
}

TEST(HouseCorners, AfterTheAlphabetComeDoubleLetters) {
  Site site;
  for (int i = 0; i < 14; ++i)
    site.features.push_back(
        sample::house_of(i + 1, {{10.0 * i, 0}, {10.0 * i + 5, 0}, {10.0 * i + 5, 4}, {10.0 * i, 4}}));
  const auto corners = house_corners(site);
  ASSERT_EQ(corners.size(), 56u);
  EXPECT_EQ(corners[25].tag, "Z");
  EXPECT_EQ(corners[26].tag, "AA");
  EXPECT_EQ(corners[27].tag, "AB");
  EXPECT_EQ(corners[52].tag, "BA");
}

TEST(HouseCorners, NoHouseOrNoOutlineHasNone) {
  EXPECT_TRUE(house_corners(Site{}).empty());
  EXPECT_TRUE(house_corners(with_house({})).empty());
  EXPECT_TRUE(house_corners(with_house({{3, 3}, {3, 3}, {3, 3}})).empty());
}

}  // namespace underlawn
