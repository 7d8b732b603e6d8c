// SPDX-License-Identifier: GPL-3.0-or-later
// Soil against the published equations. The numbers beside each source were worked by hand from its equation.
#include "ground/soil.h"

#include <gtest/gtest.h>

#include "ground/undisturbed.h"

using namespace underlawn;

namespace {
double k(double n, double q, double s, Grain grain, ConductivityModel model) {
  return conductivity({n, q, s, grain}, model).value();
}
}  // namespace

// Johansen 1975, with dry soil as in Farouki 1986, sec. 3.3.2; other minerals 2.0 W/mK above 20 % quartz.
TEST(PublishedSoil, JohansenFromPorosityQuartzAndSaturation) {
  EXPECT_NEAR(k(0.40, 0.60, 0.5, Grain::fine, ConductivityModel::johansen), 1.44783, 2e-5);
  EXPECT_NEAR(k(0.45, 0.25, 0.7, Grain::fine, ConductivityModel::johansen), 1.18818, 2e-5);
  EXPECT_NEAR(k(0.35, 0.80, 0.3, Grain::fine, ConductivityModel::johansen), 1.39157, 2e-5);
  EXPECT_NEAR(k(0.35, 0.80, 0.3, Grain::coarse, ConductivityModel::johansen), 1.75355, 2e-5);
  EXPECT_NEAR(conductivity_of_solids(0.60), 4.49062, 1e-5);
  EXPECT_NEAR(saturated_conductivity(0.45, 0.25), 1.36839, 1e-5);
  EXPECT_NEAR(dry_conductivity(1 - 1600.0 / 2700, ConductivityModel::johansen, Grain::fine), 0.23692, 1e-5);
}

// Lu, Ren, Gong, Horton 2007, Soil Sci. Soc. Am. J. 71:8-14 (its dry line as the MAESPA
// model codes it).
TEST(PublishedSoil, LuFromTheSameSoils) {
  EXPECT_NEAR(k(0.40, 0.60, 0.5, Grain::coarse, ConductivityModel::lu), 1.55539, 2e-5);
  EXPECT_NEAR(k(0.45, 0.25, 0.5, Grain::fine, ConductivityModel::lu), 1.08643, 2e-5);
}

// Cote and Konrad 2005, Can. Geotech. J. 42:443-458 (kappa as the Common Land Model
// codes it: 3.55 medium and fine sands, 1.90 silty and clayey soils).
TEST(PublishedSoil, CoteAndKonradFromTheSameSoils) {
  EXPECT_NEAR(k(0.40, 0.60, 0.5, Grain::coarse, ConductivityModel::cote_konrad), 1.58903, 2e-5);
  EXPECT_NEAR(k(0.45, 0.25, 0.5, Grain::fine, ConductivityModel::cote_konrad), 0.97112, 2e-5);
}

// Kersten 1949, University of Minnesota Bulletin 28 (from memory).
TEST(PublishedSoil, KerstenFromWaterAndDensity) {
  EXPECT_NEAR(kersten_conductivity(0.20, 100 * 16.018463, false), 1.4003, 1e-4);
  EXPECT_NEAR(kersten_conductivity(0.10, 110 * 16.018463, true), 1.9973, 1e-4);
}

// Tables after de Vries 1963, MJ/(m3 K): sandy soil 2.12 and 2.96, clay soil 2.27 and 3.10, of 40 % pores
// with 20 and 40 % of water (Moene & van Dam, table 2.2, as given at what-when-how.com). Ours store a little
// less.
TEST(PublishedSoil, HeatCapacityIsNoMoreThanTheTablesAfterDeVries) {
  for (const auto& [water, printed] :
       {std::pair(0.2, 2.12), std::pair(0.4, 2.96), std::pair(0.2, 2.27), std::pair(0.4, 3.10)}) {
    EXPECT_LE(heat_capacity({0.4, 0.5, water / 0.4, Grain::fine}), printed * 1e6) << water;
    EXPECT_GE(heat_capacity({0.4, 0.5, water / 0.4, Grain::fine}), 0.89 * printed * 1e6) << water;
  }
}

TEST(PublishedSoil, RefusesWhatNoSoilIs) {
  EXPECT_FALSE(conductivity({0.4, 0.5, 1.2, Grain::fine}, ConductivityModel::johansen));
  EXPECT_FALSE(conductivity({0.4, 0.5, 0.02, Grain::fine}, ConductivityModel::johansen));
  EXPECT_FALSE(conductivity({0.4, -0.1, 0.5, Grain::fine}, ConductivityModel::cote_konrad));
  EXPECT_FALSE(conductivity({0.7, 0.1, 0.5, Grain::fine}, ConductivityModel::lu));
}

// Kusuda & Achenbach 1965, ASHRAE Transactions 71(1):61-74: mean 11 C, amplitude 13 K, coldest day 35, 0.05
// m2/day.
TEST(PublishedSoil, KusudaAndAchenbachByDepthAndDay) {
  const GroundClimate climate{11, 13, 35};
  const double a = 0.05 / 86400;
  const struct {
    double z, t35, t80, t126, t217, t300;
  } rows[] = {{0.0, -2.0000, 1.7092, 10.9441, 24.0000, 12.9507},
              {1.0, 3.1431, 2.9643, 7.5055, 18.8569, 15.6005},
              {1.5, 5.3312, 4.1039, 6.9085, 16.6688, 15.8717},
              {2.0, 7.1728, 5.3388, 6.8004, 14.8272, 15.7101},
              {3.0, 9.8005, 7.6618, 7.4478, 12.1995, 14.6869}};
  for (const auto& r : rows) {
    EXPECT_NEAR(undisturbed_temperature(climate, a, r.z, 35), r.t35, 1e-4);
    EXPECT_NEAR(undisturbed_temperature(climate, a, r.z, 80), r.t80, 1e-4);
    EXPECT_NEAR(undisturbed_temperature(climate, a, r.z, 126), r.t126, 1e-4);
    EXPECT_NEAR(undisturbed_temperature(climate, a, r.z, 217.5), r.t217, 1e-4);
    EXPECT_NEAR(undisturbed_temperature(climate, a, r.z, 300), r.t300, 1e-4);
  }
  EXPECT_NEAR(damping_depth(a), 2.41022, 1e-5);
  EXPECT_NEAR(undisturbed_temperature({10, 12, 35}, 0.5e-6, 1.2, 200), 14.704, 1e-3);
}
