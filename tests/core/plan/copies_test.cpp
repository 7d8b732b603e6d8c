// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/copies.h"

#include <gtest/gtest.h>

#include "plan/edits.h"
#include "plane/region.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

Plan with_extras() {
  Plan plan = sample::half_acre();
  GivenTrench t;
  t.head = {1, 1};
  t.bends = {{5, 1}};
  t.end = {5, 9};
  plan.wishes.locked = {t};
  plan.dimensions = {{{0, 0}, {3, 4}, DimensionWay::straight, 1, "x"}};
  return plan;
}

}  // namespace

TEST(Copies, AreMovedAndGetNewIds) {
  const Plan plan = with_extras();
  const Feature first = plan.site.features.front();
  const Plan clip = edit::taken_out(plan, {{first.id}, {0}, {0}, false});
  EXPECT_TRUE(clip.site.lot.empty());
  const Plan after = edit::with_added(plan, clip, {2, 3});
  const edit::Things fresh = edit::added(plan, after);
  ASSERT_EQ(fresh.features.size(), 1U);
  EXPECT_EQ(fresh.features.front(), edit::next_feature_id(plan));
  const Feature& copy = *find_feature(after.site, fresh.features.front());
  EXPECT_EQ(copy.name, first.name);
  EXPECT_EQ(copy.points.front(), first.points.front() + (Point{2, 3}));
  ASSERT_EQ(after.wishes.locked.size(), 2U);
  EXPECT_EQ(after.wishes.locked[1].bends.front(), (Point{7, 4}));
  EXPECT_EQ(after.dimensions[1].to, (Point{5, 7}));
}

TEST(Copies, BeyondTheLargestPlanAreLeftOut) {
  const Plan plan = with_extras();
  const Plan clip = edit::taken_out(plan, {{plan.site.features.front().id}, {0}, {0}, false});
  EXPECT_EQ(edit::with_added(plan, clip, {kLargestPlan, 0}), plan);
}

TEST(Turned, FourQuartersAreWhereItWas) {
  const Plan plan = with_extras();
  edit::Things all{{}, {0}, {0}, true};
  for (const Feature& f : plan.site.features) all.features.push_back(f.id);
  Plan turned = plan;
  for (int i = 0; i < 4; ++i) turned = edit::turned(turned, all, M_PI / 2, {7, 3});
  for (std::size_t i = 0; i < plan.site.features.size(); ++i)
    for (std::size_t k = 0; k < plan.site.features[i].points.size(); ++k)
      EXPECT_LT(distance(plan.site.features[i].points[k], turned.site.features[i].points[k]), 1e-9);
  EXPECT_LT(distance(plan.wishes.locked[0].end, turned.wishes.locked[0].end), 1e-9);
  EXPECT_LT(distance(plan.site.lot[2].at, turned.site.lot[2].at), 1e-9);
  ASSERT_TRUE(turned.site.entry.has_value());
  EXPECT_LT(distance(plan.site.entry->at, turned.site.entry->at), 1e-9);
}

TEST(Turned, CounterClockwiseAboutThePoint) {
  Plan plan;
  Feature well;
  well.id = 1;
  well.kind = FeatureKind::well;
  well.points = {{10, 0}};
  plan.site.features = {well};
  const Plan after = edit::turned(plan, {{1}, {}, {}, false}, M_PI / 2, {8, 0});
  EXPECT_NEAR(after.site.features[0].points[0].x, 8, 1e-12);
  EXPECT_NEAR(after.site.features[0].points[0].y, 2, 1e-12);
}

}  // namespace underlawn
