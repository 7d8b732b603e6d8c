// SPDX-License-Identifier: GPL-3.0-or-later
#include "ground/soil.h"

#include <gtest/gtest.h>

using namespace underlawn;

TEST(Soil, DensityAndPorosityAreOneThing) {
  EXPECT_NEAR(porosity_from_density(dry_density(0.37)), 0.37, 1e-12);
}

// 15 % water in 1,620 kg of dry soil is 243 kg, in 400 litres of pores.
TEST(Soil, WaterByMassFillsPores) {
  EXPECT_NEAR(saturation_from_water(0.15, 0.40), 243.0 / 400, 1e-12);
}

TEST(Soil, EveryPresetHasAConductivityByEveryModelAndWetterConductsBetter) {
  for (const SoilPreset& p : soil_presets())
    for (auto model : {ConductivityModel::johansen, ConductivityModel::lu, ConductivityModel::cote_konrad}) {
      const auto k = conductivity(p.matter, model);
      ASSERT_TRUE(k) << p.name << " by " << model_name(model) << ": " << k.error().message();
      EXPECT_GT(*k, 0.1) << p.name << ", " << model_source(model);
      SoilMatter wetter = p.matter;
      wetter.saturation = 1;
      EXPECT_GE(conductivity(wetter, model).value(), *k - 1e-12) << p.name;
      EXPECT_GE(heat_capacity(wetter), heat_capacity(p.matter)) << p.name;
    }
}
