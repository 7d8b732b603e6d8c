// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/comparison.h"

#include <gtest/gtest.h>

#include "cost/discount.h"
#include "cost/fuels.h"

namespace underlawn {
namespace {

// One year: 10 MWh of heat, 2 MWh of cooling; the heat pump takes 3 MWh.
Simulation simulation() {
  YearSum y;
  y.heating = 10'000 * kKilowattHour;
  y.cooling = 2'000 * kKilowattHour;
  y.heating_power = 2'500 * kKilowattHour;
  y.cooling_power = 400 * kKilowattHour;
  y.pump_power = 100 * kKilowattHour;
  Simulation s;
  s.years = {y};
  return s;
}

OtherSystem furnace() {
  OtherSystem o;
  o.name = "Furnace";
  o.heat_content = 25 * kKilowattHour;
  o.efficiency = 0.8;
  o.price = 3;
  o.emission = 6;
  o.cooling = 4;
  o.first_cost = 10'000;
  o.maintenance = 100;
  o.life = 15;
  return o;
}

Running running() {
  Running r;
  r.electricity = 0.20;
  r.electricity_emission = 0.5;
  r.discount = 0.05;
  r.years = 20;
  r.unit_cost = 9'000;
  r.unit_life = 30;
  r.others = {furnace()};
  return r;
}

// Fuel 10 000/(25 x 0.8) = 500 units at 3; cooling 2000/4 = 500 kWh at 0.20; 100 maintenance: 1700 a year.
TEST(Comparison, WorkedByHand) {
  const Comparison c = compare(simulation(), 20'000, running(), 25);
  EXPECT_EQ(c.years, 20);
  EXPECT_NEAR(c.others[0].fuel, 500, 1e-9);
  EXPECT_NEAR(c.others[0].running_today, 1700, 1e-9);
  EXPECT_NEAR(c.loop.running_today, 600, 1e-9);
  EXPECT_NEAR(c.loop.first, 29'000, 1e-9);
  EXPECT_NEAR(c.against[0].extra, 19'000, 1e-9);
  EXPECT_NEAR(*c.against[0].simple, 19'000.0 / 1100, 1e-9);
  EXPECT_NEAR(c.others[0].emission, 20 * (500 * 6 + 500 * 0.5), 1e-6);
  EXPECT_NEAR(c.loop.emission, 20 * 3000 * 0.5, 1e-6);
  const double upv = uniform_present_value(0.05, 20);
  EXPECT_NEAR(c.loop.life_cycle, 29'000 + 600 * upv, 1e-6);
  EXPECT_NEAR(c.others[0].life_cycle, 10'000 + 1700 * upv + 10'000 * single_present_value(0.05, 15), 1e-6);
  EXPECT_NEAR(*c.against[0].net_savings, c.others[0].life_cycle - c.loop.life_cycle, 1e-9);
  EXPECT_EQ(c.loop.paid.size(), 21u);
  EXPECT_NEAR(c.others[0].paid[15], 10'000 + 15 * 1700 + 10'000, 1e-6);
}

TEST(Comparison, NothingPaysBackBeforeTheHeatPumpHasAPrice) {
  Pricing pricing;
  pricing.running = running();
  EXPECT_TRUE(heat_pump_priced(pricing));
  pricing.running.unit_cost = 0;
  EXPECT_FALSE(heat_pump_priced(pricing));
  const Against a = compare(simulation(), 20'000, pricing.running, 25, heat_pump_priced(pricing)).against[0];
  EXPECT_FALSE(a.simple || a.discounted || a.net_savings);
  EXPECT_NEAR(a.saved_first, 1100, 1e-9);
  pricing.terms.extras.push_back({});
  EXPECT_TRUE(heat_pump_priced(pricing)) << "it may be a line of the offer";
}

TEST(Comparison, RisingPricesFollowTheModifiedFactor) {
  Running r = running();
  r.electricity_escalation = 0.03;
  r.others[0].escalation = 0.04;
  r.others[0].life = 100;
  const Comparison c = compare(simulation(), 0, r, 25);
  EXPECT_NEAR(c.loop.life_cycle, 9'000 + 600 * modified_present_value(0.05, 0.03, 20), 1e-6);
  EXPECT_NEAR(c.others[0].life_cycle,
              10'000 + 1500 * modified_present_value(0.05, 0.04, 20) +
                  100 * modified_present_value(0.05, 0.03, 20) + 100 * uniform_present_value(0.05, 20),
              1e-6);
}

// Paid back in year 2, undone by what is bought in year 3, paid back for good in year 5.
TEST(Comparison, APaybackThatIsUndoneDoesNotCount) {
  EXPECT_NEAR(*payback_years(100, {60, 60, -50, 20, 20}, 0), 4.5, 1e-12);
  EXPECT_FALSE(payback_years(100, {60, 60, -50}, 0));
  EXPECT_FALSE(payback_years(0, {-1}, 0));
}

TEST(Comparison, NothingIsBoughtAgainInTheLastYear) {
  Running r = running();
  r.years = 15;
  EXPECT_EQ(compare(simulation(), 0, r, 25).others[0].years.back().bought, 0);
  r.years = 16;
  EXPECT_EQ(compare(simulation(), 0, r, 25).others[0].years[14].bought, 10'000);
}

TEST(Comparison, WithoutYearsOrWithoutEndThereIsNoAnswerAndNoCrash) {
  EXPECT_TRUE(compare({}, 1, running(), 25).others.empty());
  Running r = running();
  r.others[0].efficiency = 0;
  EXPECT_EQ(compare(simulation(), 1, r, 25).others[0].fuel, 0);
  r.others[0] = furnace();
  r.electricity = 100;  // never pays
  const Against a = compare(simulation(), 1e6, r, 25).against[0];
  EXPECT_FALSE(a.simple);
  EXPECT_FALSE(a.discounted);
}

// A resistance heater of the loop's own electricity costs the loop's seasonal performance times as much.
TEST(Comparison, AHeaterCostsAsManyTimesAsTheLoopIsBetter) {
  Running r = running();
  OtherSystem o = furnace();
  o.heat_content = kKilowattHour;
  o.efficiency = 1;
  o.price = r.electricity;
  o.cooling = 0;
  r.others = {o};
  Simulation s = simulation();
  s.years[0].cooling = s.years[0].cooling_power = s.years[0].pump_power = 0;
  const Comparison c = compare(s, 0, r, 25);
  EXPECT_NEAR(c.others[0].energy_today / c.loop.energy_today, 4, 1e-9);
}

}  // namespace
}  // namespace underlawn
