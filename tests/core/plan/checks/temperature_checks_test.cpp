// SPDX-License-Identifier: GPL-3.0-or-later
// What the rules about temperatures say of a simulation put together by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "plan/checks/rules.h"
#include "support/crafted.h"
#include "thermal/surroundings.h"

namespace underlawn {
namespace {

using testing::HasSubstr;

YearSum mild_year() {
  YearSum y;
  y.heating = 100;
  y.cooling = 50;
  y.coldest = 2;
  y.warmest = 25;
  y.coldest_hour = 33 * 24 + 6;
  y.warmest_hour = 200 * 24;
  return y;
}

Outcome outcome_of(const Plan& plan, const YearSum& last) {
  Outcome o = crafted::two_trenches(plan);
  Temperatures t;
  t.simulation.years = {mild_year(), last};
  t.simulation.coldest = std::min(2.0, last.coldest);
  t.simulation.warmest = std::max(25.0, last.warmest);
  o.temperatures = std::make_shared<const Temperatures>(std::move(t));
  return o;
}

template <class Change>
std::vector<Finding> said(Check check, Change change) {
  YearSum year = mild_year();
  change(year);
  const Plan plan = crafted::plan();
  return check(plan, outcome_of(plan, year));
}

void nothing(YearSum&) {}

}  // namespace

TEST(TemperatureChecks, SayNothingOfAMildYearOrOfNone) {
  const Plan plan = crafted::plan();
  Outcome bare = crafted::two_trenches(plan);
  bare.temperatures = nullptr;
  for (Check check : {checks::water_too_cold, checks::water_too_warm, checks::ground_freezes,
                      checks::backup_heat, checks::cooling_short, checks::outside_table}) {
    EXPECT_TRUE(said(check, nothing).empty());
    EXPECT_TRUE(check(plan, bare).empty());
  }
}

TEST(DesignDayMissing, ComparesTheYearsColdestHourWithTheDesignDay) {
  Plan plan = crafted::plan();
  Outcome o = crafted::two_trenches(plan);
  Surroundings s = make_surroundings(plan.thermal).value();
  s.weather.outdoor.assign(s.weather.outdoor.size(), 10);
  s.weather.outdoor[300] = -11.9;
  s.load.outdoor_cold = -15;
  const auto said = [&] {
    o.surroundings = std::make_shared<const Surroundings>(s);
    return checks::design_day_missing(plan, o);
  };
  const auto f = said();
  ASSERT_EQ(f.size(), 1u);
  EXPECT_EQ(f[0].measured, -11.9);
  EXPECT_EQ(f[0].required, -15);
  s.weather.outdoor[300] = -15;
  EXPECT_TRUE(said().empty());
  s.weather.outdoor[300] = -11.9;
  plan.thermal.load_source = LoadSource::hours;
  EXPECT_TRUE(said().empty()) << "a file's hours have no design day";
}

TEST(WaterTooCold, NamesTheYearTheHourAndBothTemperatures) {
  const auto f = said(checks::water_too_cold, [](YearSum& y) { y.coldest = -4; });
  ASSERT_EQ(f.size(), 1u);
  EXPECT_EQ(f[0].title, "The water gets too cold: year 2, 3 Feb, 06:00");
  EXPECT_EQ(f[0].measured, -4);
  EXPECT_EQ(f[0].required, crafted::plan().thermal.coldest_allowed);
  EXPECT_EQ(f[0].severity, Severity::error);
  EXPECT_EQ(f[0].quantity, Quantity::temperature);
}

TEST(WaterTooWarm, NamesTheYearTheHourAndBothTemperatures) {
  const auto f = said(checks::water_too_warm, [](YearSum& y) { y.warmest = 40; });
  ASSERT_EQ(f.size(), 1u);
  EXPECT_EQ(f[0].title, "The water gets too warm: year 2, 20 Jul, 00:00");
  EXPECT_EQ(f[0].measured, 40);
}

TEST(GroundFreezes, IsAHintUnlessSomethingThatFrostHarmsIsNear) {
  const auto frozen = [](YearSum& y) { y.hours_wall_frozen = 1000; };
  const auto f = said(checks::ground_freezes, frozen);
  ASSERT_EQ(f.size(), 1u);
  EXPECT_EQ(f[0].severity, Severity::hint);
  EXPECT_EQ(f[0].measured, 3.6e6);
  Plan plan = crafted::plan();
  Feature line = crafted::feature(9, FeatureKind::utility, {{29, 38}, {61, 38}});
  line.utility = UtilityKind::water;
  plan.site.features.push_back(line);
  YearSum year = mild_year();
  frozen(year);
  const auto near = checks::ground_freezes(plan, outcome_of(plan, year));
  ASSERT_EQ(near.size(), 1u);
  EXPECT_EQ(near[0].severity, Severity::warning);
  EXPECT_THAT(near[0].title, HasSubstr("near"));
}

TEST(BackupHeat, SpeaksAboveATenthOfTheHeat) {
  EXPECT_TRUE(said(checks::backup_heat, [](YearSum& y) { y.backup = 10; }).empty());
  const auto f = said(checks::backup_heat, [](YearSum& y) { y.backup = 11; });
  ASSERT_EQ(f.size(), 1u);
  EXPECT_NEAR(f[0].measured, 0.11, 1e-12);
}

TEST(CoolingShort, SpeaksAboveAHundredthOfTheCooling) {
  EXPECT_TRUE(said(checks::cooling_short, [](YearSum& y) { y.unmet_cooling = 0.5; }).empty());
  EXPECT_EQ(said(checks::cooling_short, [](YearSum& y) { y.unmet_cooling = 1; }).size(), 1u);
}

TEST(OutsideTable, CountsTheTime) {
  const auto f = said(checks::outside_table, [](YearSum& y) { y.hours_outside_table = 3; });
  ASSERT_EQ(f.size(), 1u);
  EXPECT_EQ(f[0].measured, 3 * 3600);
  EXPECT_EQ(f[0].severity, Severity::hint);
  EXPECT_EQ(said(checks::outside_table, [](YearSum& y) { y.hours_outside_table = 501; })[0].severity,
            Severity::warning);
}

}  // namespace underlawn
