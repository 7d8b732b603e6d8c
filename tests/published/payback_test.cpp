// SPDX-License-Identifier: GPL-3.0-or-later
// Discount factors, payback and heat contents against published numbers.
#include <gtest/gtest.h>

#include <cmath>

#include "cost/comparison.h"
#include "cost/discount.h"
#include "cost/fuels.h"

using namespace underlawn;

namespace {

constexpr double kBtu = 1055.05585262;  // J

// Table of interest formulas at energy-models.com/time-value-money, seen: 6 %, 10 years: F/P 1.791, P/A
// 7.3601.
TEST(Payback, FactorsAsPrinted) {
  EXPECT_NEAR(1 / single_present_value(0.06, 10), 1.791, 5e-4);
  EXPECT_NEAR(uniform_present_value(0.06, 10), 7.3601, 5e-5);
}

// NIST Handbook 135 (1995), appendix of factors at 3 %, from memory: SPV of year 15 0.642, UPV of 20 years
// 14.88, of 25 years 17.41.
TEST(Payback, FactorsOfNistHandbook135) {
  EXPECT_NEAR(single_present_value(0.03, 15), 0.642, 5e-4);
  EXPECT_NEAR(uniform_present_value(0.03, 20), 14.88, 5e-3);
  EXPECT_NEAR(uniform_present_value(0.03, 25), 17.41, 5e-3);
}

// A printed table of compound interest at 0.25 % a period (vdocuments.us, "discrete cash flow", table 1,
// seen).
TEST(Payback, FactorsOfAPrintedTable) {
  EXPECT_NEAR(single_present_value(0.0025, 15), 0.9632, 5e-5);
  EXPECT_NEAR(uniform_present_value(0.0025, 20), 19.4845, 5e-5);
  EXPECT_NEAR(uniform_present_value(0.0025, 25), 24.2055, 5e-5);
}

// UPW* as the GSA criteria print it (gsacriteria.tpub.com p100, seen): (1+e)/(d-e) (1 - ((1+e)/(1+d))^n),
// written out term by term; n where d = e.
TEST(Payback, ModifiedFactorIsTheSumOfItsYears) {
  for (double e : {-0.02, 0.0, 0.01, 0.05}) {
    double sum = 0;
    for (int t = 1; t <= 25; ++t) sum += std::pow(1 + e, t) * std::pow(1.03, -t);
    EXPECT_NEAR(modified_present_value(0.03, e, 25), sum, 1e-9);
  }
  EXPECT_EQ(modified_present_value(0.03, 0.03, 25), 25);
  EXPECT_EQ(uniform_present_value(0, 7), 7);
}

// Motion sensors for 60 lamps, qammunity.org/1240936, seen: 3600 paid, 1895.04 saved a year; simple payback
// 1.9 years, discounted at 6 % 2 + 125.65/1591.11 = 2.08 years.
TEST(Payback, SensorsOfAUniversity) {
  EXPECT_NEAR(*simple_payback(3600, 1895.04), 1.9, 0.05);
  EXPECT_NEAR(*payback_years(3600, std::vector<double>(10, 1895.04), 0.06), 2.08, 0.005);
}

// "A measure that costs $5,000 and saves $2,500 per year has a simple payback of 2 years": apogee.net, seen.
TEST(Payback, AMeasureOfFiveThousand) {
  EXPECT_EQ(simple_payback(5000, 2500), 2.0);
  EXPECT_EQ(payback_years(5000, {2500, 2500}, 0), 2.0);
  EXPECT_FALSE(payback_years(5000, {2500, 2400}, 0));
  EXPECT_EQ(payback_years(-1, {}, 0), 0.0);
}

// CRC Handbook of energy management, as copied at civilengineeringhandbook.tk (example 8.x, seen): 7481
// saved in the first year, 30,000 paid. The plain quotient is 4.01 years.
TEST(Payback, HandbookOfEnergyManagement) {
  EXPECT_NEAR(*simple_payback(30'000, 7481), 4.01, 0.005);
}

// EIA, units and calculators (as copied, seen): gallon of propane 91,452 Btu, of heating oil 138,500, therm
// 100,000, kWh 3412. EIA, carbon dioxide emissions coefficients, 2 February 2016, seen: propane 5.76 kg a
// gallon and 63.07 a million Btu, home heating fuel 10.16 and 73.16, natural gas 53.07 a million Btu.
TEST(Payback, HeatContentsAndEmissionsOfFuels) {
  const auto content = [](std::size_t i) { return fuels()[i].heat_content / kBtu; };
  EXPECT_NEAR(content(0), 100'000, 1e-6);
  EXPECT_NEAR(content(1), 91'452, 1e-6);
  EXPECT_NEAR(content(2), 138'500, 1e-6);
  EXPECT_NEAR(content(3), 3412, 0.5);
  const auto by_heat = [&](std::size_t i) { return fuels()[i].emission / content(i) * 1e6; };
  EXPECT_NEAR(by_heat(0), 53.07, 0.005);
  EXPECT_NEAR(by_heat(1), 63.07, 0.1);  // EIA's own gallon of that year held 91,333 Btu
  EXPECT_NEAR(by_heat(2), 73.16, 0.25);
  // EIA: 0.86 lb of CO2 a kWh of all United States electricity in 2022, seen; eGRID's mean is within 6 % of
  // it.
  EXPECT_NEAR(fuels()[3].emission / 0.45359237, 0.86, 0.06 * 0.86);
}

// "Price per unit/heat content per unit x 1,000,000" is the price of a million Btu: EIA, "How do I compare
// the cost of heating fuels?", seen. A furnace of efficiency 1 pays just that.
TEST(Payback, FuelsAreComparedByTheirHeat) {
  YearSum y;
  y.heating = 1e6 * kBtu;
  Simulation s;
  s.years = {y};
  Running r;
  OtherSystem oil;
  oil.heat_content = 138'500 * kBtu;
  oil.price = 4;
  r.others = {oil};
  EXPECT_NEAR(compare(s, 0, r, 1).others[0].energy_today, 4.0 / 138'500 * 1e6, 1e-9);
}

}  // namespace
