// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "pipe/friction.h"

using namespace underlawn;

namespace {

// Central difference of ln f over ln Re.
template <class F>
double measured(const F& factor, double re) {
  const double step = 1e-5;
  return (std::log(factor(re * std::exp(step))) - std::log(factor(re * std::exp(-step)))) / (2 * step);
}

}  // namespace

TEST(FrictionSlope, IsThatOfTheFactor) {
  for (double roughness : {0.0, 7e-5, 0.01})
    for (double re = 1.2; re < 1e6; re *= 1.37)
      EXPECT_NEAR(friction_at(re, roughness).slope,
                  measured([&](double r) { return friction_factor(r, roughness); }, re), 1e-5)
          << re << " " << roughness;
  EXPECT_DOUBLE_EQ(friction_at(0.5).slope, -1);
  EXPECT_NEAR(friction_at(7).slope, -1, 1e-6) << "where the rough term's logarithm is nothing";
}

TEST(FrictionSlope, IsThatOfTheCoil) {
  for (double coil : {0.3, 0.9144, 2.0})
    for (double re = 1.2; re < 1e5; re *= 1.37)
      EXPECT_NEAR(coil_friction_at(re, 0.0215, coil).slope,
                  measured([&](double r) { return coil_friction_factor(r, 0.0215, coil); }, re), 1e-4)
          << re << " " << coil;
}

// Slope of what is asked for, over ln Re.
template <class F>
double slope_of(const F& what, double re) {
  const double step = 1e-4;
  return (what(re * std::exp(step)) - what(re * std::exp(-step))) / (2 * step);
}

TEST(FrictionSlope, BendAndTwistAreTheNextTwoSlopesWhereItIsGentle) {
  int gentle = 0;
  const auto check = [&](const auto& law, double re) {
    const Friction f = law(re);
    if (!f.gentle) return;
    ++gentle;
    EXPECT_NEAR(f.bend, slope_of([&](double r) { return law(r).slope; }, re), 2e-5 + 1e-3 * std::abs(f.bend))
        << re;
    EXPECT_NEAR(f.twist, slope_of([&](double r) { return law(r).bend; }, re), 5e-3) << re;
  };
  for (double re = 1.2; re < 1e6; re *= 1.37) {
    for (double roughness : {0.0, 7e-5, 0.01}) check([&](double r) { return friction_at(r, roughness); }, re);
    for (double coil : {0.3, 0.9144, 2.0})
      check([&](double r) { return coil_friction_at(r, 0.0215, coil); }, re);
  }
  EXPECT_GT(gentle, 150);
}

// Churchill 1977 as it is printed, without our short cuts.
TEST(FrictionSlope, ShortCutsLoseNoDigits) {
  for (double roughness : {0.0, 7e-5, 1e-3, 0.01, 0.05})
    for (double re = 1; re < 1e8; re *= 1.013) {
      const double a = std::pow(2.457 * std::log(1 / (std::pow(7 / re, 0.9) + 0.27 * roughness)), 16);
      const double b = std::pow(37530 / re, 16);
      const double f = 8 * std::pow(std::pow(8 / re, 12) + std::pow(a + b, -1.5), 1.0 / 12);
      EXPECT_NEAR(friction_factor(re, roughness) / f, 1, 1e-12) << re << " " << roughness;
    }
}
