// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/plan_troubles.h"

#include <gtest/gtest.h>

#include <functional>
#include <limits>

#include "plane/region.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInf = std::numeric_limits<double>::infinity();

std::vector<std::string> things(const Plan& plan) {
  std::vector<std::string> all;
  for (const Trouble& t : plan_troubles(plan)) all.push_back(t.thing);
  return all;
}

struct Field {
  std::string thing;
  std::function<double&(Plan&)> of;
  std::vector<double> bad, good;
};

std::vector<Field> wishes_fields() {
  return {
      {"Coil length", [](Plan& p) -> double& { return p.wishes.coil_length; }, {0, -1, 1e6}, {100}},
      {"Trench length", [](Plan& p) -> double& { return p.wishes.trench_length; }, {0, -1, 1e6}, {100}},
      {"Loop diameter", [](Plan& p) -> double& { return p.wishes.loop_diameter; }, {0, -1, 11}, {0.5}},
      {"Trench width", [](Plan& p) -> double& { return p.wishes.trench_width; }, {0, -0.3, 11}, {0.5}},
      {"Trench depth", [](Plan& p) -> double& { return p.wishes.trench_depth; }, {0, -0.3, 11}, {2}},
      {"Trench spacing", [](Plan& p) -> double& { return p.wishes.spacing; }, {0.5, -1, 101}, {1, 100}},
      {"Gap at trench ends", [](Plan& p) -> double& { return p.wishes.end_gap; }, {-0.1, 101}, {0}},
      {"Run width", [](Plan& p) -> double& { return p.wishes.run_width; }, {0, -1, 11}, {0.3}},
      {"Run depth", [](Plan& p) -> double& { return p.wishes.run_depth; }, {0, -1, 11}, {1}},
      {"Bedding", [](Plan& p) -> double& { return p.wishes.bedding; }, {-0.1, 5}, {0, 0.3}},
  };
}

std::vector<Field> other_fields() {
  return {
      {"Swell", [](Plan& p) -> double& { return p.ground.swell; }, {-0.1, 3}, {0, 0.5}},
      {"Shrinkage", [](Plan& p) -> double& { return p.ground.shrinkage; }, {-0.6, 1}, {0, -0.3}},
      {"Angle of repose", [](Plan& p) -> double& { return p.ground.repose; }, {0, -1, 1.57}, {0.5}},
      {"Frost depth", [](Plan& p) -> double& { return p.ground.frost_depth; }, {-1, 11}, {0}},
      {"North", [](Plan& p) -> double& { return p.site.north; }, {10}, {0, -1}},
      {"Root zone factor", [](Plan& p) -> double& { return p.site.root_zone_factor; }, {-1, 101}, {0, 12}},
      {"Setback of lot edge 2", [](Plan& p) -> double& { return p.site.lot[1].setback; }, {-1, 1001}, {0}},
      {"Oak trunk diameter",
       [](Plan& p) -> double& { return p.site.features[5].trunk_diameter; },
       {0, -1, 11},
       {1}},
      {"Power line depth", [](Plan& p) -> double& { return p.site.features[8].depth; }, {-1, 21}, {0}},
      {"Well trench clearance",
       [](Plan& p) -> double& { return *p.site.features[4].trench_clearance; },
       {-1, 1001},
       {0}},
      {"Well run clearance",
       [](Plan& p) -> double& { return *p.site.features[4].run_clearance; },
       {-1, 1001},
       {0}},
  };
}

void expect_named(const Field& field) {
  std::vector<double> bad = field.bad;
  bad.insert(bad.end(), {kNan, kInf, -kInf});
  for (double value : bad) {
    Plan plan = sample::half_acre();
    field.of(plan) = value;
    const auto troubles = plan_troubles(plan);
    const auto named = std::find_if(troubles.begin(), troubles.end(),
                                    [&](const Trouble& t) { return t.thing == field.thing; });
    ASSERT_NE(named, troubles.end()) << field.thing << " " << value;
    EXPECT_FALSE(named->value.empty());
    EXPECT_FALSE(named->bound.empty());
    EXPECT_FALSE(named->advice.empty());
  }
  for (double value : field.good) {
    Plan plan = sample::half_acre();
    field.of(plan) = value;
    EXPECT_EQ(things(plan), std::vector<std::string>{}) << field.thing << " " << value;
  }
}

}  // namespace

TEST(PlanTroubles, AreNoneInASoundPlanAndAnEmptyOne) {
  EXPECT_EQ(things(sample::half_acre()), std::vector<std::string>{});
  EXPECT_EQ(things(sample::tiny_lot()), std::vector<std::string>{});
  EXPECT_EQ(things(sample::empty()), std::vector<std::string>{});
}

TEST(PlanTroubles, NameEveryNumberOfTheWishesThatIsOutOfBounds) {
  for (const Field& field : wishes_fields()) expect_named(field);
}

TEST(PlanTroubles, NameEveryNumberOfSiteAndGroundThatIsOutOfBounds) {
  for (const Field& field : other_fields()) expect_named(field);
}

TEST(PlanTroubles, TheWishThatIsComputedOnlyHasToBeANumber) {
  Plan plan = sample::half_acre();
  plan.wishes.unknown = CoilUnknown::pitch;
  plan.wishes.pitch = -5;
  EXPECT_TRUE(plan_troubles(plan).empty());
  plan.wishes.pitch = kNan;
  EXPECT_EQ(things(plan), std::vector<std::string>{"Coil pitch"});
  plan.wishes.unknown = CoilUnknown::coil_length;
  plan.wishes.pitch = -5;
  EXPECT_EQ(things(plan), std::vector<std::string>{"Coil pitch"});
}

TEST(PlanTroubles, SpeakThePlansOwnUnits) {
  Plan plan = sample::half_acre();
  plan.wishes.trench_width = -0.3048;
  plan.units = UnitSystem::us;
  EXPECT_NE(plan_troubles(plan)[0].value.find("1'"), std::string::npos) << plan_troubles(plan)[0].value;
  plan.units = UnitSystem::metric;
  EXPECT_NE(plan_troubles(plan)[0].value.find("m"), std::string::npos);
  EXPECT_NE(plan_troubles(plan)[0].message().find("Trench width"), std::string::npos);
}

TEST(PlanTroubles, NameRingsThatAreNone) {
  Plan two = sample::half_acre();
  two.site.lot.resize(2);
  EXPECT_FALSE(site_troubles(two).empty());
  Plan crossed = sample::half_acre();
  std::swap(crossed.site.lot[0], crossed.site.lot[1]);
  EXPECT_FALSE(site_troubles(crossed).empty());
  Plan field = sample::half_acre();
  field.site.features[2].points.resize(2);
  const auto troubles = site_troubles(field);
  ASSERT_EQ(troubles.size(), 1u);
  EXPECT_NE(troubles[0].message().find("Drain field"), std::string::npos) << troubles[0].message();
}

TEST(PlanTroubles, NamePointsAndLinesOfTheWrongCountOrFarAway) {
  Plan plan = sample::half_acre();
  plan.site.features[5].points.clear();
  plan.site.features[6].points.push_back({1, 1});
  plan.site.features[8].points.resize(1);
  plan.site.features[9].points[0].x = 2 * kLargestPlan;
  EXPECT_EQ(things(plan), (std::vector<std::string>{"Number of points of Oak", "Number of points of Maple",
                                                    "Number of points of Power line", "Well line point x"}));
  plan.site.features[9].points[0] = {kNan, kNan};
  EXPECT_FALSE(plan_troubles(plan).empty());
}

TEST(PlanTroubles, NameIdsThatAreNotPositiveOrUsedTwice) {
  Plan plan = sample::half_acre();
  plan.site.features[5].id = 5;
  ASSERT_EQ(things(plan), std::vector<std::string>{"Id of Oak"});
  plan.site.features[5].id = -1;
  ASSERT_EQ(things(plan), std::vector<std::string>{"Id of Oak"});
}

TEST(PlanTroubles, AHouseMayTouchTheLotLineButNotStandOverIt) {
  Plan plan = sample::half_acre();
  plan.site.features[0].points = sample::box_feet(0, 35, 50, 65);
  plan.site.entry->at = sample::feet(20, 65);
  EXPECT_TRUE(plan_troubles(plan).empty());
  plan.site.features[0].points = sample::box_feet(-10, 35, 50, 65);
  ASSERT_EQ(things(plan), std::vector<std::string>{"House"});
  EXPECT_TRUE(site_troubles(plan).empty()) << "the rest can still be solved";
}

TEST(PlanTroubles, TheEntryPointHasToBeOnItsHousesWall) {
  Plan plan = sample::half_acre();
  plan.site.entry->at = sample::feet(80, 75);
  ASSERT_EQ(plan_troubles(plan).size(), 1u);
  EXPECT_EQ(plan_troubles(plan)[0].thing, "Entry point distance from the wall of House");
  plan.site.entry->house_id = sample::oak;
  EXPECT_EQ(things(plan), std::vector<std::string>{"House of the entry point"});
  plan.site.entry->house_id = 99;
  EXPECT_EQ(things(plan), std::vector<std::string>{"House of the entry point"});
}

TEST(PlanTroubles, NameAPipeThatNobodyMakes) {
  Plan plan = sample::half_acre();
  plan.wishes.pipe = "7 in DR 3";
  plan.wishes.header_pipe = "";
  EXPECT_EQ(things(plan), (std::vector<std::string>{"Coil pipe", "Header pipe"}));
}

TEST(PlanTroubles, NameAClearanceRuleOutOfBounds) {
  Plan plan = sample::half_acre();
  plan.site.rules = {{FeatureKind::drain_field, -1, kNan}};
  EXPECT_EQ(things(plan), (std::vector<std::string>{"Drain field clearance rule for trenches",
                                                    "Drain field clearance rule for header and run"}));
}

}  // namespace underlawn
