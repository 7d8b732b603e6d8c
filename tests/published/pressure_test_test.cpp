// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/pressure_test.h"

#include <numbers>

#include "flow/test_procedure.h"
#include "pipe/liquid_volume.h"

namespace underlawn {
namespace {

using std::numbers::pi;

LoopVolume dr11_loop() {
  return {{{"3/4 in DR 11", 0.02154, 0.02667, 11, 900}, {"1-1/4 in DR 11", 0.03404, 0.04216, 11, 60}}};
}

LoopState at(double temperature) {
  LoopState state;
  state.temperature = {{0, temperature}};
  return state;
}

double drop(const TestProgramme& programme, double after, const LoopState& state) {
  const TestCurve curve = test_curve(programme, dr11_loop(), state).value();
  const double start = shut_in_start(programme);
  return 1 - curve.pressure_at(start + after) / curve.pressure_at(start);
}

// The same test by another road: t^n = n/Gamma(1-n) Int (1-exp(-x t)) x^(-1-n) dx (Bernstein's representation
// of a power; the Kelvin chains of Ferry, Viscoelastic Properties of Polymers, ch. 3), marched as a chain of
// springs with dashpots. Pressure 1 at the end of pumping; returns what is lost after `shut` seconds.
double chain_drop(double pump, double hold, double shut) {
  const double n = 0.075, dl = 0.1, first = 1e-9, last = 20, step = 0.25;
  const double scale = std::pow(3600, -n) * n / std::tgamma(1 - n), k = 11.0 / 9;
  const double c = 2 * 1.45 * (0.1 + k * k) / (k * k - 1) / 534e6, liquid = 1 / 2.1e9;
  std::vector<double> decay, gain, strain;
  for (double x = first; x < last; x *= std::exp(dl)) {
    decay.push_back(std::exp(-x * step));
    gain.push_back(scale * std::pow(x, -n) * dl);
  }
  strain.assign(gain.size(), 0);
  const double at_once = scale * std::pow(last, -n) / n;
  double p = 0, kept = 0;
  for (double t = step; t <= pump + hold + shut + step / 2; t += step) {
    const bool closed = t > pump + hold + step / 2;
    double past = 0, now = at_once;
    for (std::size_t i = 0; i < gain.size(); ++i) {
      past += strain[i] * decay[i];
      now += gain[i] * (1 - decay[i]);
    }
    p = closed ? (kept - c * past) / (c * now + liquid) : std::min(1.0, t / pump);
    for (std::size_t i = 0; i < gain.size(); ++i)
      strain[i] = strain[i] * decay[i] + gain[i] * (1 - decay[i]) * p;
    if (!closed) kept = c * (past + now * p) + liquid * p;
  }
  return 1 - p;
}

}  // namespace

// A power-law creep compliance J relaxes, at constant volume, as G with G(t) J(t) = sin(n pi)/(n pi) exactly
// (Ferry, Viscoelastic Properties of Polymers, ch. 3). A soft pipe, so that the water's own is nothing.
TEST(PublishedPressureTest, AShutInLoopRelaxesAsTheoryOfViscoelasticitySays) {
  LoopState soft = at(23);
  soft.creep.modulus_one_hour = 2e6;
  const TestCurve curve = test_curve(pump_then_shut_in(1000, 86400), dr11_loop(), soft).value();
  const double n = 0.075, compliance = 2 * 1.45 * (0.1 + 121.0 / 81) / (121.0 / 81 - 1);
  for (double t : {3600.0, 6 * 3600.0, 24 * 3600.0}) {
    const double volume = curve.added_at(86400) / loop_volume(dr11_loop());
    const double theory = volume * 2e6 / compliance * std::pow(t / 3600, -n) * std::sin(n * pi) / (n * pi);
    EXPECT_NEAR(curve.pressure_at(t + 30) / theory, 1, 0.002) << t;
  }
}

TEST(PublishedPressureTest, AChainOfSpringsAndDashpotsLosesTheSame) {
  const LoopState state = at(23);
  EXPECT_NEAR(drop(pump_then_shut_in(600e3), 1800, state), chain_drop(60, 0, 1800), 0.003);
  EXPECT_NEAR(drop(hold_then_shut_in(600e3), 1800, state), chain_drop(60, 1800, 1800), 0.001);
}

// The Handbook's modulus falls from one minute to thirty-one by 1 - 31^-0.075 = 22.7 %: what a loop loses
// that stood at pressure for a minute. Held half an hour it loses 5 to 6 %, held four hours about 1 %: so a
// flat 5 % condemns sound loops.
TEST(PublishedPressureTest, ASoundLoopLosesAsMuchAsTheModulusSays) {
  const LoopState state = at(23);
  const TestProgramme minute = {
      "", {{PhaseKind::pump, 1, 600e3}, {PhaseKind::hold, 59, 0}, {PhaseKind::shut_in, 1800, 0}}};
  EXPECT_NEAR(drop(minute, 1800, state), 0.227, 0.01);
  EXPECT_NEAR(drop(hold_then_shut_in(600e3), 1800, state), 0.055, 0.003);
  EXPECT_NEAR(drop(long_hold_then_shut_in(600e3), 1800, state), 0.01, 0.002);
}

// ASTM F2164 (from memory): after 4 h and a drop of 10 psi a sound line stays within 5 % for an hour.
TEST(PublishedPressureTest, AfterTheDropASoundLoopRisesALittleAndPasses) {
  const TestProgramme test = rebound_test(600e3);
  EXPECT_LT(drop(test, 300, at(23)), -0.01);
  EXPECT_GT(drop(test, 3600, at(23)), drop(test, 1200, at(23)));
  for (double t = 60; t <= 3600; t += 60) EXPECT_NEAR(drop(test, t, at(23)), 0, kReboundTolerance) << t;
}

// Water grows by 2.07e-4/K at 20 C (CRC Handbook), polyethylene by 9e-5 per F lengthwise, held so by 2 x 1.45
// of that; its modulus falls by 18 % from 60 to 73.4 F (PPI Handbook, from memory). By hand at 600 kPa and
// half an hour: (4.70e-4 - 2.07e-4 + 0.0225 x 600e3 x 1.57e-8)/(1.57e-8 + 0.05e-8) = 29 kPa/K.
TEST(PublishedPressureTest, AKelvinMovesItByThirtyKilopascals) {
  EXPECT_NEAR(pressure_per_kelvin(dr11_loop(), at(20), 600e3, 1800).value(), -29e3, 2e3);
}

// The Plastics Pipe Institute's old make-up allowance (before ASTM F2164, from memory; its pressure is not
// stated), US gallons per 100 ft of 1-1/4 in pipe in 1, 2 and 3 h: a sound DR 11 line at 1.5 x 160 psi asks
// for the same, to within a factor of two.
TEST(PublishedPressureTest, MakeUpIsOfTheOldAllowancesSize) {
  const LoopVolume line = {{{"1-1/4 in DR 11", 0.03404, 0.04216, 11, 30.48}}};
  const TestCurve curve = test_curve(hold_then_shut_in(240 * kPsi, 4 * 3600, 3600), line, at(23)).value();
  const double gallon = 3.785412e-3, allowed[] = {0.06, 0.10, 0.16};
  for (int hour : {1, 2, 3}) {
    const double made_up = curve.added_at(kPumpUp + hour * 3600) - curve.added_at(kPumpUp);
    EXPECT_LT(made_up / gallon, 2 * allowed[hour - 1]) << hour;
    EXPECT_GT(made_up / gallon, 0.5 * allowed[hour - 1]) << hour;
  }
}

// PPI Handbook of PE Pipe, ch. 3, table B.1.1, PE4XXX at 73 F, ksi by hours (the page as copied at
// lfweb.sjgov.org/EHD/0/doc/600304/Page93, seen).
TEST(PublishedPressureTest, CreepLeavesTheHandbooksModulus) {
  const double year = 365.25 * 24;
  for (const auto& [hours, ksi] : {std::pair(0.5, 82.0), std::pair(2.0, 74.0), std::pair(12.0, 63.0),
                                   std::pair(100.0, 55.0), std::pair(year, 40.0), std::pair(50 * year, 29.0)})
    EXPECT_NEAR(creep_modulus({}, hours * 3600) / (1000 * kPsi), ksi, 0.025 * ksi) << hours;
}

// The multipliers from memory.
TEST(PublishedPressureTest, ModulusFallsWithTemperature) {
  EXPECT_NEAR(modulus_multiplier(23).value(), 1, 1e-9);
  EXPECT_NEAR(modulus_multiplier(10).value(), 1.32, 1e-9);
  EXPECT_EQ(modulus_multiplier(61).error().code, "pe_temperature");
}

// CRC Handbook of Chemistry and Physics: density of air-free water, kg/m3. (Kell's equation 16 is as the R
// package preMetabolizer codes it.)
TEST(PublishedPressureTest, WaterHasTheHandbooksDensity) {
  const std::pair<double, double> printed[] = {{0.1, 999.849}, {4, 999.975},  {10, 999.703},
                                               {20, 998.207},  {30, 995.650}, {40, 992.218}};
  for (const auto& [t, density] : printed) EXPECT_NEAR(water_density(t).value(), density, 0.01) << t;
  EXPECT_FALSE(water_density(-1));
}

}  // namespace underlawn
