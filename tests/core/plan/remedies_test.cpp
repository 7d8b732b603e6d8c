// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/remedies.h"

#include <gtest/gtest.h>

#include "core/layout/judge.h"
#include "cost/bill.h"
#include "plan/solve.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

// Setbacks of 0.2 m: middle lines may lie from y = 0.657 to 12.343, room for four rows 12 ft apart. The
// tank's clearance takes the upper part of it.
Plan strip_with_tank(double clearance) {
  Plan p = sample::empty();
  for (Point corner : {Point{0, 0}, {30, 0}, {30, 13}, {0, 13}}) p.site.lot.push_back({corner, 0.2});
  Feature tank;
  tank.id = 2;
  tank.kind = FeatureKind::septic_tank;
  tank.points = {{13, 12.6}, {15, 12.6}, {15, 12.7}, {13, 12.7}};
  tank.trench_clearance = tank.run_clearance = clearance;
  p.site.features = {tank};
  p.wishes.trench_length = 26;
  p.wishes.circuits = 4;
  p.wishes.coil_in_run = false;
  p.thermal.years = 1;
  return p;
}

const MoreRoom* of_kind(const std::vector<MoreRoom>& all, MoreRoom::Kind kind) {
  for (const MoreRoom& r : all)
    if (r.kind == kind) return &r;
  return nullptr;
}

}  // namespace

// Four rows reach up to a floor at y = 0.657 + 3 x 3.6576 + 0.457 = 12.087, which leaves 0.513 m to the tank.
TEST(Remedies, AClearanceIsLessenedNoMoreThanItMustBe) {
  const Plan plan = strip_with_tank(4);
  const auto all = remedies_of(plan);
  const MoreRoom* r = of_kind(all, MoreRoom::Kind::clearance);
  ASSERT_NE(r, nullptr);
  EXPECT_TRUE(asks_leave(*r));
  EXPECT_EQ(r->circuits, 4);
  EXPECT_NEAR(*r->plan.site.features[0].trench_clearance, 0.5, 1e-9);
  EXPECT_EQ(r->plan.wishes, plan.wishes);
  EXPECT_NE(r->sentence.find("Septic tank"), std::string::npos) << r->sentence;
}

TEST(Remedies, HaveThePriceAndTheCircuitsOfThePlanThatTheyMake) {
  const Plan plan = strip_with_tank(4);
  const double now = solve(plan).bill->price;
  const auto all = remedies_of(plan);
  ASSERT_FALSE(all.empty());
  EXPECT_LE(all.size(), kMostRemedies);
  for (std::size_t i = 0; i < all.size(); ++i) {
    SCOPED_TRACE(all[i].sentence);
    const Outcome o = solve(all[i].plan);
    EXPECT_EQ(static_cast<int>(o.layout.trenches.size()), all[i].circuits);
    EXPECT_GT(all[i].circuits, 3);
    EXPECT_NEAR(all[i].cost, o.bill->price, 1e-6);
    EXPECT_NEAR(all[i].dearer, o.bill->price - now, 1e-6);
    if (i > 0 && all[i].circuits == all[i - 1].circuits && all[i].holds == all[i - 1].holds) {
      EXPECT_GE(all[i].cost, all[i - 1].cost);
    }
  }
}

// The area leaves one row below it and one above.
TEST(Remedies, WhatTheOwnerKeepsFreeMayBeGivenUp) {
  Plan plan = strip_with_tank(0);
  plan.site.features[0].kind = FeatureKind::no_dig;
  plan.site.features[0].points = {{13, 3}, {15, 3}, {15, 10}, {13, 10}};
  const auto all = remedies_of(plan);
  const MoreRoom* r = of_kind(all, MoreRoom::Kind::give_up);
  ASSERT_NE(r, nullptr);
  EXPECT_FALSE(asks_leave(*r));
  EXPECT_EQ(r->circuits, 4);
  EXPECT_TRUE(r->plan.site.features.empty());
}

TEST(Remedies, WhatIsHeldMayBeLetGo) {
  Plan plan = strip_with_tank(0);
  plan.site.features.clear();
  plan.wishes.locked = {{{2, 3}, {28, 3}}};  // no row below it, and two above
  const auto all = remedies_of(plan);
  const MoreRoom* r = of_kind(all, MoreRoom::Kind::let_go);
  ASSERT_NE(r, nullptr);
  EXPECT_EQ(r->circuits, 4);
  EXPECT_TRUE(r->plan.wishes.locked.empty());
}

// Two tanks keep the same upper part free: the fourth row needs 0.513 m from both (above), and either alone
// brings nothing.
TEST(Remedies, TwoThingsAreLessenedTogetherWhereNoOneSuffices) {
  Plan plan = strip_with_tank(4);
  Feature other = plan.site.features[0];
  other.id = 3;
  other.points = {{18, 12.6}, {20, 12.6}, {20, 12.7}, {18, 12.7}};
  plan.site.features.push_back(other);
  const auto all = remedies_of(plan);
  EXPECT_EQ(of_kind(all, MoreRoom::Kind::clearance), nullptr);
  const MoreRoom* r = of_kind(all, MoreRoom::Kind::pair);
  ASSERT_NE(r, nullptr);
  EXPECT_TRUE(asks_leave(*r));
  EXPECT_EQ(r->circuits, 4);
  for (const Feature& f : r->plan.site.features) EXPECT_NEAR(*f.trench_clearance, 0.5, 1e-9);
  EXPECT_NE(r->sentence.find(display_name(plan.site.features[0])), std::string::npos) << r->sentence;
  EXPECT_NE(r->sentence.find(display_name(plan.site.features[1])), std::string::npos) << r->sentence;
}

// A locked trench and an area of the owner's: without both there are four rows.
TEST(Remedies, WhatIsHeldAndWhatIsKeptFreeMayGoTogether) {
  Plan plan = strip_with_tank(0);
  plan.site.features[0].kind = FeatureKind::no_dig;
  plan.site.features[0].points = {{13, 10.5}, {15, 10.5}, {15, 12.7}, {13, 12.7}};
  plan.wishes.locked = {{{2, 3}, {28, 3}}};
  const auto all = remedies_of(plan);
  const MoreRoom* r = of_kind(all, MoreRoom::Kind::pair);
  ASSERT_NE(r, nullptr);
  EXPECT_FALSE(asks_leave(*r));
  EXPECT_EQ(r->circuits, 4);
  EXPECT_TRUE(r->plan.wishes.locked.empty());
  EXPECT_TRUE(r->plan.site.features.empty());
}

TEST(Remedies, ThatAreNoLongerWantedStop) {
  std::stop_source stop;
  stop.request_stop();
  EXPECT_TRUE(remedies_of(strip_with_tank(4), {}, stop.get_token()).empty());
}

TEST(Remedies, NothingIsAskedWhereNothingIsMissing) {
  Plan plan = strip_with_tank(4);
  plan.wishes.circuits = 3;
  EXPECT_TRUE(remedies_of(plan).empty());
  EXPECT_TRUE(remedies_of(sample::empty()).empty());
}

}  // namespace underlawn
