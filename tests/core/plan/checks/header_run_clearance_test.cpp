// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

using Keys = std::vector<std::string>;
using checks::header_run_clearance;
using crafted::keys;

}  // namespace

TEST(HeaderRunClearance, LetsTheRunLeaveItsOwnHouse) {
  const Plan plan = crafted::plan();
  EXPECT_TRUE(header_run_clearance(plan, crafted::two_trenches(plan)).empty());
}

TEST(HeaderRunClearance, ButNotPassUnderIt) {
  const Plan plan = crafted::plan();
  Outcome outcome = crafted::two_trenches(plan);
  outcome.layout.run.line = {{50, 20}, {50, 10}, {30, 40}};
  EXPECT_EQ(keys(header_run_clearance(plan, outcome)), Keys{"header_run_clearance/run/feature-1"});
}

TEST(HeaderRunClearance, MeasuresFromTheEdgeOfTheTrench) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(crafted::feature(2, FeatureKind::well, {{28.8, 42}}));
  const auto found = header_run_clearance(plan, crafted::two_trenches(plan));
  ASSERT_EQ(keys(found), Keys{"header_run_clearance/header/feature-2"});
  EXPECT_NEAR(found[0].measured, 0.9, 1e-9);
  plan.site.features.back().points = {{28.7, 42}};
  EXPECT_TRUE(header_run_clearance(plan, crafted::two_trenches(plan)).empty());
}

TEST(HeaderRunClearance, WhatMayBeCrossedMayBeCrossedAndWhatMayNotMayNot) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(
      crafted::feature(2, FeatureKind::drive, {{20, 28}, {70, 28}, {70, 30}, {20, 30}}));
  EXPECT_TRUE(header_run_clearance(plan, crafted::two_trenches(plan)).empty());
  plan.site.features.back().may_cross = false;
  EXPECT_EQ(keys(header_run_clearance(plan, crafted::two_trenches(plan))),
            Keys{"header_run_clearance/run/feature-2"});
}

TEST(HeaderRunClearance, AZeroClearanceStillForbidsToRunThrough) {
  Plan plan = crafted::plan();
  plan.site.features.push_back(
      crafted::feature(2, FeatureKind::no_dig, {{20, 28}, {70, 28}, {70, 30}, {20, 30}}));
  plan.site.features.back().run_clearance = 0;
  EXPECT_EQ(header_run_clearance(plan, crafted::two_trenches(plan)).size(), 1u);
  plan.site.features.back() = crafted::feature(2, FeatureKind::utility, {{0, 30}, {100, 30}});
  plan.site.features.back().run_clearance = 0;
  plan.site.features.back().may_cross = false;
  EXPECT_EQ(header_run_clearance(plan, crafted::two_trenches(plan)).size(), 1u);
}

}  // namespace underlawn
