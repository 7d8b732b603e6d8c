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
