// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/kinds.h"

#include <gtest/gtest.h>

#include "support/sample_plans.h"

namespace underlawn {

TEST(Kinds, OfAShapeAreAllThatAreDrawnSo) {
  EXPECT_EQ(edit::kinds_of_shape(FeatureShape::line), (std::vector<FeatureKind>{FeatureKind::utility}));
  EXPECT_EQ(edit::kinds_of_shape(FeatureShape::point),
            (std::vector<FeatureKind>{FeatureKind::well, FeatureKind::tree}));
  EXPECT_EQ(edit::kinds_of_shape(FeatureShape::area).size(), static_cast<std::size_t>(kFeatureKinds - 3));
}

TEST(Kinds, AnotherKindKeepsShapeNameAndNoteOnly) {
  Plan plan = sample::half_acre();
  for (Feature& f : plan.site.features)
    if (f.id == sample::drain_field) {
      f.name = "Old field";
      f.note = "dry";
      f.trench_clearance = 12;
    }
  const Feature was = *find_feature(plan.site, sample::drain_field);
  const Plan after = edit::with_kind(plan, {sample::drain_field}, FeatureKind::no_dig);
  const Feature& now = *find_feature(after.site, sample::drain_field);
  EXPECT_EQ(now.kind, FeatureKind::no_dig);
  EXPECT_EQ(now.points, was.points);
  EXPECT_EQ(now.name, "Old field");
  EXPECT_EQ(now.note, "dry");
  EXPECT_FALSE(now.trench_clearance);
  EXPECT_EQ(after.site.features.size(), plan.site.features.size());
}

TEST(Kinds, WhatIsOfAnotherShapeOrNotThereStaysAsItIs) {
  const Plan plan = sample::half_acre();
  EXPECT_EQ(edit::with_kind(plan, {sample::oak, sample::power, 999}, FeatureKind::drive), plan);
  EXPECT_EQ(edit::with_kind(plan, {sample::oak}, FeatureKind::tree), plan);
}

// What was accepted of the drain field says nothing about the patio it became.
TEST(Kinds, WhatWasAcceptedOfTheOldKindIsForgotten) {
  Plan plan = sample::half_acre();
  plan.accepted = {{"clearance/feature-" + std::to_string(sample::drain_field), "agreed"}};
  const Plan after = edit::with_kind(plan, {sample::drain_field}, FeatureKind::no_dig);
  EXPECT_TRUE(after.accepted.empty());
}

}  // namespace underlawn
