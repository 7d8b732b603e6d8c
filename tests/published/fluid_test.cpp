// SPDX-License-Identifier: GPL-3.0-or-later
#include "pipe/fluid.h"

#include <gtest/gtest.h>

using namespace underlawn;

namespace {

void expect_properties(Fluid fluid, double x, double t, double rho, double cp, double k, double mu) {
  const auto p = fluid_properties(fluid, x, t);
  ASSERT_TRUE(p) << fluid_name(fluid) << " " << t;
  EXPECT_NEAR(p->density, rho, 0.06);
  EXPECT_NEAR(p->specific_heat, cp, 0.6);
  EXPECT_NEAR(p->conductivity, k, 6e-5);
  EXPECT_NEAR(p->viscosity * 1000, mu, 6e-4);
}

}  // namespace

// Melinder 2010 coefficients; the values worked from them by hand.
TEST(PublishedFluid, MelinderPropertiesByMass) {
  expect_properties(Fluid::propylene_glycol, 0.20, -5, 1020.8, 3926, 0.4657, 5.410);
  expect_properties(Fluid::propylene_glycol, 0.30, 0, 1031.6, 3803, 0.4285, 7.117);
  expect_properties(Fluid::ethanol, 0.15, 0, 980.2, 4413, 0.4747, 4.281);
  expect_properties(Fluid::ethanol, 0.20, -10, 977.6, 4383, 0.4387, 9.564);
  expect_properties(Fluid::methanol, 0.15, 5, 977.6, 4165, 0.4919, 2.395);
  expect_properties(Fluid::ethylene_glycol, 0.20, 20, 1024.1, 3896, 0.5077, 1.662);
}

// Freezing points printed in the Melinder set, by mass: within half a kelvin of its coefficients.
TEST(PublishedFluid, MelinderFreezingPoints) {
  const struct {
    Fluid fluid;
    double x, t;
  } rows[] = {{Fluid::ethanol, 0.11, -5.0},          {Fluid::ethanol, 0.21, -11.8},
              {Fluid::methanol, 0.078, -5.0},        {Fluid::methanol, 0.178, -13.1},
              {Fluid::propylene_glycol, 0.15, -5.0}, {Fluid::propylene_glycol, 0.25, -10.0},
              {Fluid::ethylene_glycol, 0.20, -7.9},  {Fluid::ethylene_glycol, 0.30, -14.6}};
  for (const auto& r : rows) {
    EXPECT_NEAR(freezing_point(r.fluid, r.x).value(), r.t, 0.5) << fluid_name(r.fluid) << r.x;
    EXPECT_NEAR(concentration_for(r.fluid, r.t).value(), r.x, 0.012) << fluid_name(r.fluid) << r.t;
  }
}

// ASHRAE Handbook tables for propylene glycol are by volume: 20 vol % at 20 C (about 20.6 % by mass).
TEST(PublishedFluid, AshraePropyleneGlycolByVolume) {
  const auto p = fluid_properties(Fluid::propylene_glycol, 0.206, 20).value();
  EXPECT_NEAR(p.density / 1019.01, 1, 0.006);
  EXPECT_NEAR(p.specific_heat / 3973, 1, 0.03);
  EXPECT_NEAR(p.conductivity / 0.492, 1, 0.03);
  EXPECT_NEAR(p.viscosity / 2.02e-3, 1, 0.05);
}

TEST(PublishedFluid, RefusesBelowFreezingAndBeyondTheTables) {
  EXPECT_EQ(fluid_properties(Fluid::propylene_glycol, 0.15, -8).error().code, "fluid_temperature");
  EXPECT_EQ(fluid_properties(Fluid::ethanol, 0.7, 5).error().code, "fluid_concentration");
  EXPECT_EQ(fluid_properties(Fluid::water, 0, -1).error().code, "fluid_temperature");
  EXPECT_FALSE(concentration_for(Fluid::water, -2));
}
