// SPDX-License-Identifier: GPL-3.0-or-later
// Volume percent of a mixture from its mass percent, and loss factors of fittings.
#include "flow/antifreeze.h"

#include <gtest/gtest.h>

#include "flow/fittings.h"

using namespace underlawn;

// ASHRAE's pairs of mass and volume percent as the open CoolProp source stores them ("ASHRAE, Propylene
// Glycol", "ASHRAE, Ethylene Glycol").
TEST(AntifreezePublished, VolumePercentOfMassPercent) {
  struct Pair {
    Fluid fluid;
    double mass, volume;
  };
  for (const Pair& p : {Pair{Fluid::propylene_glycol, 5, 4.8}, Pair{Fluid::propylene_glycol, 10, 9.6},
                        Pair{Fluid::propylene_glycol, 15, 14.5}, Pair{Fluid::propylene_glycol, 20, 19.4},
                        Pair{Fluid::propylene_glycol, 25, 24.4}, Pair{Fluid::ethylene_glycol, 5, 4.4},
                        Pair{Fluid::ethylene_glycol, 10, 8.9}, Pair{Fluid::ethylene_glycol, 15, 13.6},
                        Pair{Fluid::ethylene_glycol, 20, 18.1}, Pair{Fluid::ethylene_glycol, 25, 22.9}})
    EXPECT_NEAR(100 * volume_fraction(p.fluid, p.mass / 100), p.volume, 0.25) << p.mass;
}

// Hooper 1981 as the open library "fluids" works it: K1 900, Kinf 4, 2 in, Re 1e4 gives 6.09.
TEST(FittingsPublished, HoopersTwoK) {
  EXPECT_NEAR(fitting_k({900, 4}, 2 * 0.0254, 1e4), 6.09, 0.005);
}

TEST(Antifreeze, ConcentrateAndWaterMakeTheLoopFull) {
  FlowWishes w;
  const Antifreeze a = antifreeze_for(w, 0.4).value();
  const double mass = 0.4 * fluid_properties(w.fluid, w.mass_fraction, 20)->density;
  EXPECT_NEAR(a.concentrate * pure_density(w.fluid) / mass, 0.20, 1e-12);
  EXPECT_NEAR(a.wanted_freezing, -6.9, 1e-9);
  EXPECT_TRUE(a.enough);
  ASSERT_TRUE(a.recommended);
  EXPECT_LT(*a.recommended, w.mass_fraction);
  EXPECT_NEAR(*freezing_point(w.fluid, *a.recommended), -6.9, 1e-3);
}

TEST(Antifreeze, WaterAloneCannot) {
  FlowWishes w;
  w.fluid = Fluid::water;
  const Antifreeze a = antifreeze_for(w, 0.4).value();
  EXPECT_EQ(a.concentrate, 0);
  EXPECT_FALSE(a.enough);
  EXPECT_FALSE(a.recommended);
  w.coldest_temperature = 8;
  EXPECT_TRUE(antifreeze_for(w, 0.4)->enough);
}
