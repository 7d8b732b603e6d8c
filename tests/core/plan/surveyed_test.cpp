// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/surveyed.h"

#include <gtest/gtest.h>

#include <numbers>

#include "files/plan_file.h"
#include "plan/edits.h"
#include "plan/plan_troubles.h"
#include "plan/solve.h"
#include "plane/region.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

Plan metric() {
  Plan plan;
  plan.units = UnitSystem::metric;
  return plan;
}

Deed oblong() {
  Deed deed;
  deed.text = "N 0 E 30 m\nN 90 E 40 m\nS 0 E 30 m\nN 90 W 40 m";
  return deed;
}

Sighting satellite(const std::string& name, double latitude, double longitude) {
  Sighting s;
  s.name = name;
  s.method = SightingMethod::latitude_longitude;
  s.latitude = latitude;
  s.longitude = longitude;
  return s;
}

}  // namespace

TEST(Surveyed, TheDeedBecomesTheLotLineAndKeepsTheSetback) {
  Plan plan = edit::with_lot(metric(), {{0, 0}, {9, 0}, {9, 9}}, 2);
  plan = edit::with_lot_by_deed(plan, oblong());
  ASSERT_EQ(plan.site.lot.size(), 4u);
  EXPECT_NEAR(area(lot_ring(plan.site)), 1200, 1e-9);
  EXPECT_EQ(plan.site.lot[0].setback, 2);
  EXPECT_EQ(plan.survey.deed, oblong());
  EXPECT_TRUE(plan_troubles(plan).empty());
}

TEST(Surveyed, ADeedThatIsWrongOrOpenLeavesThePlanAlone) {
  for (const char* text : {"", "N 0 E 30 m", "N 95 E 30 m\nS 0 E 3 m\nN 90 W 4 m",
                           "N 0 E 30 m\nS 45 E 30 m\nN 0 E 30 m\nS 45 W 30 m"}) {  // the last crosses itself
    Deed deed;
    deed.text = text;
    EXPECT_TRUE(surveyed_deed(deed, metric()).no_lot.has_value()) << text;
    EXPECT_EQ(edit::with_lot_by_deed(metric(), deed), metric()) << text;
  }
}

TEST(Surveyed, PlansKeepTheirSurveyAndOldOnesHaveNone) {
  Plan plan = metric();
  EXPECT_EQ(plan_to_text(plan).find("survey"), std::string::npos);
  plan.survey.deed = oblong();
  plan.survey.deed.closure = ClosureChoice::compass_rule;
  plan = edit::with_field_points(plan, {satellite("Oak", 45.1, 10.2), satellite("Oak", 45.1001, 10.2001)});
  for (int method = 0; method < 5; ++method) {
    Sighting s;
    s.method = static_cast<SightingMethod>(method);
    s.from = "Oak";
    plan = edit::with_sighting(plan, s);
  }
  const auto read = plan_from_text(plan_to_text(plan));
  ASSERT_TRUE(read);
  EXPECT_TRUE(read->remarks.empty());
  EXPECT_EQ(read->value, plan);
  EXPECT_EQ(plan.survey.notebook[1].name, "Oak-2");
}

TEST(Surveyed, KnownPointsAreLotCornersAndHouseCornersAsOnTheDigSheet) {
  const auto known = known_points(sample::half_acre().site);
  std::vector<std::string> names;
  for (const KnownPoint& k : known) names.push_back(k.name);
  EXPECT_NE(std::find(names.begin(), names.end(), "lot 1"), names.end());
  EXPECT_NE(std::find(names.begin(), names.end(), "house A"), names.end());
}

TEST(Surveyed, ARenamedPointIsFollowedByThoseMeasuredFromIt) {
  Plan plan = sample::half_acre();
  Sighting a;
  a.name = "P1";
  a.from = "lot 1";
  a.to = "lot 2";
  a.first = a.second = distance(plan.site.lot[0].at, plan.site.lot[1].at) * 0.7;
  Sighting b = a;
  b.name = "P2";
  b.from = "P1";
  b.first = 5;
  b.method = SightingMethod::bearing_distance;
  plan = edit::with_sighting(edit::with_sighting(plan, a), b);
  ASSERT_TRUE(placed_notebook(plan)[1].at);
  a.name = "Stake";
  plan = edit::with_sighting_at(plan, 0, a);
  EXPECT_EQ(plan.survey.notebook[1].from, "Stake");
  EXPECT_TRUE(placed_notebook(plan)[1].at);
  a.name = "P2";  // taken
  EXPECT_EQ(edit::with_sighting_at(plan, 0, a).survey.notebook[0].name, "P2-2");
}

TEST(Surveyed, SatellitePointsLieInTheMiddleOfTheLotUntilOneIsPinned) {
  Plan plan = edit::with_lot(metric(), {{0, 0}, {100, 0}, {100, 60}, {0, 60}}, 2);
  plan = edit::with_field_points(plan, {satellite("A", 45, 10), satellite("B", 45.0002, 10.0004)});
  auto placed = placed_notebook(plan);
  ASSERT_TRUE(placed[0].at && placed[1].at);
  EXPECT_NEAR((placed[0].at->x + placed[1].at->x) / 2, 50, 0.01);
  const Point apart = *placed[1].at - *placed[0].at;
  plan = edit::with_pinned(plan, 0, {0, 0});
  placed = placed_notebook(plan);
  EXPECT_NEAR(norm(*placed[0].at), 0, 1e-9);
  EXPECT_NEAR(distance(*placed[1].at, apart), 0, 1e-6);
}

TEST(Surveyed, FeaturesAndLotLineOfPoints) {
  Plan plan = metric();
  const auto grid = [](double e, double n) {
    Sighting s;
    s.method = SightingMethod::east_north;
    s.east = e;
    s.north = n;
    return s;
  };
  plan.survey.grid = GridTie{};
  plan = edit::with_field_points(plan, {grid(0, 0), grid(50, 0), grid(50, 40), grid(0, 40)});
  EXPECT_EQ(area(lot_ring(edit::with_lot_of(plan, {0, 1, 2, 3}).site)), 2000);
  Feature tree;
  tree.kind = FeatureKind::tree;
  EXPECT_EQ(edit::with_feature_of(plan, {2}, tree).site.features.at(0).points[0], (Point{50, 40}));
  EXPECT_EQ(edit::with_feature_of(plan, {9}, tree), plan);
  EXPECT_EQ(edit::with_lot_of(plan, {0, 1}), plan);
}

TEST(Surveyed, FiguresOfTheDeedStandBesideTheOthers) {
  Plan plan = sample::half_acre();
  plan.thermal.years = 1;
  EXPECT_EQ(solve(plan).figures.find("survey.area"), nullptr);
  plan.survey.deed = oblong();
  const Outcome outcome = solve(plan);
  ASSERT_NE(outcome.figures.find("survey.area"), nullptr);
  EXPECT_NEAR(outcome.figures.at("survey.area").value, 1200, 1e-9);
}

TEST(Surveyed, NumbersOutOfBoundsAreTold) {
  Plan plan = metric();
  plan.survey.deed.chord_tolerance = 0;
  plan.survey.deed.start = {1e9, 0};
  plan.survey.notebook = {satellite("A", 91, 0), satellite("A", 0, 1e300)};
  plan.survey.notebook[1].first = std::nan("");
  std::vector<std::string> codes;
  for (const Trouble& t : plan_troubles(plan)) codes.push_back(t.code);
  for (const char* code : {"chord_tolerance_out_of_bounds", "point_out_of_bounds", "latitude_out_of_bounds",
                           "longitude_out_of_bounds", "sighting_out_of_bounds", "sighting_name"})
    EXPECT_NE(std::find(codes.begin(), codes.end(), code), codes.end()) << code;
}
