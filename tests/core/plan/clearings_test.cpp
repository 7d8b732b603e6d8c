// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/clearings.h"

#include <gtest/gtest.h>

#include <limits>

#include "plan/checks/measure.h"
#include "plan/solve.h"
#include "site/clearances.h"
#include "support/sample_plans.h"

namespace underlawn {

// The checks measure by other means: area against area.
TEST(Clearings, AreAsFarAsTheChecksMeasure) {
  const Plan plan = sample::half_acre();
  const Outcome outcome = solve(plan);
  ASSERT_FALSE(outcome.layout.trenches.empty());
  int compared = 0;
  for (const Clearing& c : clearings(plan, outcome)) {
    EXPECT_DOUBLE_EQ(c.measured, distance(c.line.a, c.line.b));
    if (c.feature_id == 0 || !c.dug.starts_with("Trench")) continue;
    const Feature& f = *find_feature(plan.site, c.feature_id);
    double least = std::numeric_limits<double>::infinity();
    for (const Trench& t : outcome.layout.trenches) least = std::min(least, area_to_feature(outline(t), f));
    EXPECT_NEAR(c.measured, least, 1e-6) << c.thing;
    EXPECT_DOUBLE_EQ(c.required, trench_clearance(plan.site, f));
    ++compared;
  }
  EXPECT_EQ(compared, static_cast<int>(plan.site.features.size()));
}

TEST(Clearings, ShortestLineEndsOnBoth) {
  const Ring square{{0, 0}, {2, 0}, {2, 2}, {0, 2}};
  const Segment aside = shortest_between(square, true, {{5, 1}, {9, 1}}, false);
  EXPECT_EQ(aside.a, (Point{2, 1}));
  EXPECT_EQ(aside.b, (Point{5, 1}));
  const Segment to_point = shortest_between(square, true, {{5, 6}}, false);
  EXPECT_EQ(to_point.a, (Point{2, 2}));
  EXPECT_DOUBLE_EQ(distance(to_point.a, to_point.b), 5);
  const Segment across = shortest_between(square, true, {{-1, 1}, {3, 1}}, false);
  EXPECT_EQ(across.a, across.b);
  const Segment inside = shortest_between(square, true, {{1, 1}}, false);
  EXPECT_EQ(inside.a, inside.b);
}

}  // namespace underlawn
