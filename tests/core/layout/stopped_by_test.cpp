// SPDX-License-Identifier: GPL-3.0-or-later
#include "layout/stopped_by.h"

#include <gtest/gtest.h>

#include "core/layout/push_lot.h"
#include "layout/slide.h"

namespace underlawn {
namespace {

using pushed::kStart;
using pushed::square;
using pushed::wishes;

Feature tank(Point corner, double clearance) {
  Feature f;
  f.id = 7;
  f.kind = FeatureKind::septic_tank;
  f.points = {corner, corner + Point{2, 0}, corner + Point{2, 2}, corner + Point{0, 2}};
  f.trench_clearance = clearance;
  return f;
}

GivenTrench moved(Point by) {
  return {kStart.head + by, kStart.end + by};
}

std::vector<Reason> met(const Site& s, const Wishes& w, const GivenTrench& to,
                        const std::vector<Trench>& others = {}) {
  return stopped_by(s, w, others, slid(s, w, others, kStart, to), to);
}

TEST(StoppedBy, NothingWhereItIsThere) {
  EXPECT_TRUE(met(square(), wishes(), moved({5, 7})).empty());
}

TEST(StoppedBy, TheSetbackOfTheEdgeItIsPushedAgainst) {
  const auto all = met(square(), wishes(), moved({0, 40}));
  ASSERT_EQ(all.size(), 1u);
  EXPECT_EQ(all[0].restriction, (Restriction{Restriction::Kind::setback, 2, 0}));
}

TEST(StoppedBy, BothEdgesInACorner) {
  const auto all = met(square(), wishes(), moved({60, 60}));
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(all[0].restriction.edge, 1);
  EXPECT_EQ(all[1].restriction.edge, 2);
}

TEST(StoppedBy, TheClearanceOfWhatAnEndRunsInto) {
  Site s = square();
  s.features.push_back(tank({50, 29}, 4));
  const auto all = met(s, wishes(), {kStart.head, {56, 30}});
  ASSERT_EQ(all.size(), 1u);
  EXPECT_EQ(all[0].restriction.feature_id, 7);
}

TEST(StoppedBy, AThingThatKeepsNothingFreeAboutIt) {
  Site s = square();
  s.features.push_back(tank({29, 40}, 0));
  s.features[0].points = {{10, 40}, {50, 40}, {50, 41}, {10, 41}};
  const auto all = met(s, wishes(), moved({0, 10.2}));  // its floor would lie upon it
  ASSERT_EQ(all.size(), 1u);
  EXPECT_EQ(all[0].restriction.feature_id, 7);
}

TEST(StoppedBy, ATrenchThatIsLocked) {
  Trench other;
  other.head = {20, 40};
  other.end = {40, 40};
  other.width = 1;
  other.locked = true;
  const auto all = met(square(), wishes(), moved({0, 8}), {other});
  ASSERT_EQ(all.size(), 1u);
  EXPECT_EQ(all[0].kind, Reason::Kind::too_near);
  EXPECT_EQ(all[0].trench, 1);
}

}  // namespace
}  // namespace underlawn
