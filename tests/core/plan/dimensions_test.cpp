// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/dimensions.h"

#include <gtest/gtest.h>

#include <limits>

#include "plan/edits.h"
#include "plan/plan_troubles.h"
#include "plan/solve.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

Plan measured_house() {
  Plan plan = sample::half_acre();
  for (const Feature& f : plan.site.features)
    if (f.kind == FeatureKind::house) {
      plan.dimensions = {
          {f.points[0], f.points[1], DimensionWay::straight, 2, ""},
          {plan.site.lot[0].at, 0.5 * (f.points[0] + f.points[1]), DimensionWay::level, 0, ""}};
      return plan;
    }
  return plan;
}

int house_id(const Plan& plan) {
  for (const Feature& f : plan.site.features)
    if (f.kind == FeatureKind::house) return f.id;
  return 0;
}

}  // namespace

TEST(Dimension, MeasuresStraightLevelAndUpright) {
  Dimension d{{1, 1}, {4, 5}, DimensionWay::straight, 0, {}};
  EXPECT_EQ(measured(d), 5);
  d.way = DimensionWay::level;
  EXPECT_EQ(measured(d), 3);
  d.way = DimensionWay::upright;
  EXPECT_EQ(measured(d), 4);
}

TEST(Dimension, ItsLineLiesBesideAndIsAsLongAsWhatItMeasures) {
  for (const DimensionWay way : {DimensionWay::straight, DimensionWay::level, DimensionWay::upright}) {
    const Dimension d{{4, 5}, {1, 1}, way, 2, {}};
    const auto line = line_of(d);
    ASSERT_TRUE(line.has_value());
    EXPECT_NEAR(distance(line->a, line->b), measured(d), 1e-12);
  }
  EXPECT_FALSE(line_of(Dimension{{1, 1}, {1, 5}, DimensionWay::level, 0, {}}).has_value());
}

TEST(Dimension, ItsLineGoesThroughWhereItIsPut) {
  Plan plan = edit::with_dimension({}, {{0, 0}, {10, 0}, DimensionWay::straight, 0, {}});
  plan = edit::moved_dimension_part(plan, 0, 2, {3, -4});
  EXPECT_EQ(plan.dimensions[0].offset, -4);
  EXPECT_EQ(edit::moved_dimension_part(plan, 0, 1, {0, 0}), plan) << "would measure nothing";
}

TEST(Dimension, FollowsTheCornersAndEdgesItLiesOn) {
  const Plan before = measured_house();
  const Plan moved = edit::moved_feature(before, house_id(before), {3, 1});
  const Plan after = edit::with_dimensions_following(before, moved);
  EXPECT_EQ(after.dimensions[0].from, before.dimensions[0].from + (Point{3, 1}));
  EXPECT_NEAR(measured(after.dimensions[0]), measured(before.dimensions[0]), 1e-9);
  EXPECT_EQ(after.dimensions[1].from, before.dimensions[1].from) << "the lot stays";
  EXPECT_LT(distance(after.dimensions[1].to, before.dimensions[1].to + (Point{3, 1})), 1e-9);
}

TEST(Dimension, StaysWhereWhatItMeasuredIsGone) {
  const Plan before = measured_house();
  const Plan without = edit::without_feature(before, house_id(before));
  EXPECT_EQ(edit::with_dimensions_following(before, without).dimensions, before.dimensions);
}

TEST(Dimension, ChangesNothingThatIsSolved) {
  const Plan plain = sample::half_acre(), with = measured_house();
  const Outcome a = solve(plain), b = solve(with);
  EXPECT_EQ(a.layout, b.layout);
  EXPECT_EQ(a.fingerprint, b.fingerprint);
}

TEST(Dimension, OutOfBoundsIsNamed) {
  Plan plan = sample::half_acre();
  plan.dimensions = {{{0, 0}, {std::numeric_limits<double>::quiet_NaN(), 1}, {}, 0, {}},
                     {{0, 0}, {1, 1}, {}, 1e300, {}}};
  const auto troubles = plan_troubles(plan);
  ASSERT_EQ(troubles.size(), 2U);
  EXPECT_EQ(troubles[0].thing, "Dimension 1 point x");
  EXPECT_EQ(troubles[1].code, "dimension_offset_out_of_bounds");
}

}  // namespace underlawn
