// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/cut_and_join.h"

#include <gtest/gtest.h>

#include "plane/region.h"

namespace underlawn {
namespace {

Feature thing(int id, FeatureKind kind, std::vector<Point> points) {
  Feature f;
  f.id = id;
  f.kind = kind;
  f.points = std::move(points);
  f.depth = 0.9;
  f.name = "it";
  return f;
}

Plan with(std::vector<Feature> features) {
  Plan plan;
  plan.site.features = std::move(features);
  return plan;
}

const Ring kBeam = {{0, 0}, {10, 0}, {10, 2}, {0, 2}};

}  // namespace

TEST(Cut, LineKeepsItsLengthAndSettings) {
  const Plan plan = with({thing(3, FeatureKind::utility, {{0, 0}, {10, 0}, {10, 10}})});
  const auto cut = edit::line_cut(plan, 3, {4, 1});
  ASSERT_TRUE(cut.has_value());
  const auto& all = cut->site.features;
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[0].points, (Polyline{{0, 0}, {4, 0}}));
  EXPECT_EQ(all[1].points, (Polyline{{4, 0}, {10, 0}, {10, 10}}));
  EXPECT_EQ(all[1].id, 4);
  EXPECT_EQ(all[1].depth, 0.9);
}

TEST(Cut, AtACornerNoPointIsThereTwice) {
  const auto cut =
      edit::line_cut(with({thing(1, FeatureKind::utility, {{0, 0}, {10, 0}, {10, 10}})}), 1, {10, 0});
  ASSERT_TRUE(cut.has_value());
  EXPECT_EQ(cut->site.features[0].points.size(), 2U);
  EXPECT_EQ(cut->site.features[1].points.size(), 2U);
}

TEST(Cut, AtAnEndOrOfAnAreaIsRefused) {
  const Plan plan =
      with({thing(1, FeatureKind::utility, {{0, 0}, {10, 0}}), thing(2, FeatureKind::drive, kBeam)});
  EXPECT_EQ(edit::line_cut(plan, 1, {0, 0}).error().code, "cut_at_the_end");
  EXPECT_EQ(edit::line_cut(plan, 2, {0, 0}).error().code, "cut_no_line");
  EXPECT_EQ(edit::line_cut(plan, 99, {0, 0}).error().code, "cut_no_line");
  EXPECT_EQ(edit::area_cut(plan, 2, {{20, 0}, {20, 5}}).error().code, "cut_misses");
  EXPECT_EQ(edit::area_cut(plan, 2, {{5, 1}, {5, 1}}).error().code, "cut_no_way");
}

TEST(Cut, TrenchSharesItsPipe) {
  Plan plan;
  GivenTrench t;
  t.head = {0, 0};
  t.end = {30, 0};
  t.coil_length = 90;
  plan.wishes.locked = {t};
  const auto cut = edit::trench_cut(plan, 0, {10, 0});
  ASSERT_TRUE(cut.has_value());
  EXPECT_NEAR(cut->wishes.locked[0].coil_length, 30, 1e-9);
  EXPECT_NEAR(cut->wishes.locked[1].coil_length, 60, 1e-9);
}

TEST(Cut, AreaPartsAddUpAndTheLargestKeepsTheId) {
  const auto cut = edit::area_cut(with({thing(5, FeatureKind::no_dig, kBeam)}), 5, {{3, -1}, {3, 3}});
  ASSERT_TRUE(cut.has_value());
  const auto& all = cut->site.features;
  ASSERT_EQ(all.size(), 2U);
  EXPECT_NEAR(area(all[0].points), 14, 1e-3);
  EXPECT_EQ(all[0].id, 5);
  EXPECT_NEAR(area(all[1].points), 6, 1e-3);
}

TEST(Join, CutAndJoinedAgainAreaAndLineAreWhatTheyWere) {
  const Plan area_plan = with({thing(5, FeatureKind::no_dig, kBeam)});
  const auto parts = edit::area_cut(area_plan, 5, {{3, -1}, {4, 3}});
  ASSERT_TRUE(parts.has_value());
  const auto whole = edit::joined(*parts, {5, parts->site.features[1].id}, 0.1);
  ASSERT_TRUE(whole.has_value()) << whole.error().message();
  ASSERT_EQ(whole->site.features.size(), 1U);
  EXPECT_NEAR(area(whole->site.features[0].points), 20, 1e-3);
  EXPECT_EQ(whole->site.features[0].points.size(), 4U);

  const Plan line_plan = with({thing(1, FeatureKind::utility, {{0, 0}, {10, 0}, {10, 10}})});
  const auto cut = edit::line_cut(line_plan, 1, {4, 0});
  const auto line = edit::joined(*cut, {1, 2}, 0.1);
  ASSERT_TRUE(line.has_value());
  EXPECT_EQ(line->site.features[0].points, (Polyline{{0, 0}, {10, 0}, {10, 10}}));
  const auto at_corner = edit::line_cut(line_plan, 1, {10, 0});
  EXPECT_EQ(edit::joined(*at_corner, {2, 1}, 0.1)->site.features[0].points.size(), 3U);
}

TEST(Join, OfWhatDoesNotMeetOrIsUnlikeIsRefused) {
  const Ring far = {{50, 0}, {60, 0}, {60, 2}, {50, 2}};
  const Plan plan = with({thing(1, FeatureKind::no_dig, kBeam), thing(2, FeatureKind::no_dig, far),
                          thing(3, FeatureKind::drive, far), thing(4, FeatureKind::tree, {{1, 1}}),
                          thing(5, FeatureKind::tree, {{2, 1}})});
  EXPECT_EQ(edit::joined(plan, {1, 2}, 0.1).error().code, "join_apart");
  EXPECT_EQ(edit::joined(plan, {1, 3}, 0.1).error().code, "join_unlike");
  EXPECT_EQ(edit::joined(plan, {4, 5}, 0.1).error().code, "join_unlike");
  EXPECT_EQ(edit::joined(plan, {1}, 0.1).error().code, "join_one");
}

TEST(Join, LinesInAnyOrderAndDirection) {
  const Plan plan = with({thing(1, FeatureKind::utility, {{10, 0}, {20, 0}}),
                          thing(2, FeatureKind::utility, {{30, 5}, {20, 0}}),
                          thing(3, FeatureKind::utility, {{10.05, 0}, {0, 3}})});
  const auto line = edit::joined(plan, {1, 2, 3}, 0.1);
  ASSERT_TRUE(line.has_value()) << line.error().message();
  const auto& points = line->site.features.at(0).points;
  EXPECT_EQ(line->site.features.size(), 1U);
  EXPECT_EQ(std::min(points.front().x, points.back().x), 0);
  EXPECT_EQ(std::max(points.front().x, points.back().x), 30);
  EXPECT_EQ(edit::joined(plan, {1, 2, 3}, 0.01).error().code, "join_apart");
}

TEST(Join, AroundAHoleIsRefused) {
  const Plan plan = with({thing(1, FeatureKind::no_dig, {{0, 0}, {9, 0}, {9, 9}, {6, 9}, {6, 3}, {0, 3}}),
                          thing(2, FeatureKind::no_dig, {{0, 0}, {3, 0}, {3, 6}, {9, 6}, {9, 9}, {0, 9}})});
  EXPECT_EQ(edit::joined(plan, {1, 2}, 0.1).error().code, "join_hole");
}

}  // namespace underlawn
