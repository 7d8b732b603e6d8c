// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/corner_checks.h"

#include <gtest/gtest.h>

#include "plan/tape.h"

namespace underlawn {
namespace {

Site site_of(Ring ring) {
  Feature house;
  house.id = 1;
  house.kind = FeatureKind::house;
  house.points = std::move(ring);
  Site site;
  site.features = {house};
  return site;
}

std::vector<CornerCheck> checks_of(const Site& site, double out) {
  StakeOut stakes;
  stakes.corners = house_corners(site);
  return corner_checks(site, stakes, out);
}

}  // namespace

// 3, 4, 5: a wall of 4 m and 3 m drawn out beyond its corner.
TEST(CornerChecks, ASquareCornerGivesThreeFourFive) {
  const auto checks = checks_of(site_of({{0, 0}, {10, 0}, {10, 4}, {0, 4}}), 3);
  ASSERT_EQ(checks.size(), 1u);
  EXPECT_NEAR(checks[0].length, 5, 1e-12);
}

// The same two walls not square: what is taped tells it.
TEST(CornerChecks, ACornerThatIsNotSquareIsTapedOtherwise) {
  const auto checks = checks_of(site_of({{0, 0}, {10, 0}, {11, 4}, {1, 4}}), 3);
  ASSERT_EQ(checks.size(), 1u);
  EXPECT_GT(std::abs(checks[0].length - 5), 0.1);
}

TEST(CornerChecks, NoTapeGoesThroughTheHouse) {
  const Site site = site_of({{0, 0}, {12, 0}, {12, 4}, {6, 4}, {6, 9}, {0, 9}});
  const TapeGround ground = tape_ground(site);
  const auto checks = checks_of(site, 3);
  ASSERT_EQ(checks.size(), 3u);
  EXPECT_EQ(checks[0].out, 0);  // the corner that turns inwards: from (12, 4) to (6, 9)
  EXPECT_NEAR(checks[0].length, std::hypot(6, 5), 1e-12);
  for (const CornerCheck& k : checks) {
    const Point from = k.out == 0 ? k.a.at : k.b.at + k.out * unit(k.b.at - k.a.at);
    EXPECT_TRUE(tape_is_free(ground, from, k.c.at)) << k.b.tag;
    EXPECT_NEAR(distance(from, k.c.at), k.length, 1e-12);
  }
}

TEST(CornerChecks, ATrunkInTheWayMovesItToAnotherCorner) {
  Site site = site_of({{0, 0}, {10, 0}, {10, 4}, {0, 4}});
  const std::string first = checks_of(site, 3)[0].b.tag;
  Feature tree;
  tree.id = 2;
  tree.kind = FeatureKind::tree;
  tree.trunk_diameter = 0.5;
  const CornerCheck k = checks_of(site, 3)[0];
  tree.points = {0.5 * (k.b.at + k.out * unit(k.b.at - k.a.at) + k.c.at)};
  site.features.push_back(tree);
  const auto checks = checks_of(site, 3);
  ASSERT_EQ(checks.size(), 1u);
  EXPECT_NE(checks[0].b.tag, first);
}

}  // namespace underlawn
