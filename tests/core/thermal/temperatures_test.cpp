// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/temperatures.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "field/coil.h"
#include "thermal/loop_geometry.h"

using namespace underlawn;

namespace {

Layout field_of(int trenches, double spacing = 3.6576) {
  Wishes wishes;
  CoilRequest request;
  request.coil_length = wishes.coil_length;
  request.trench_length = wishes.trench_length;
  const Coil coil = solve_coil(request).value();
  Layout layout;
  for (int i = 0; i < trenches; ++i) {
    Trench t;
    t.number = i + 1;
    t.head = {0, spacing * i};
    t.end = {coil.trench_length, spacing * i};
    t.width = wishes.trench_width;
    t.depth = wishes.trench_depth;
    t.coil = coil;
    layout.trenches.push_back(t);
  }
  layout.header.legs = {{{-1, 0}, {-1, spacing * (trenches - 1) + 0.5}}};
  layout.run.line = {{-1, 0}, {-15, 0}};
  return layout;
}

// Two numbers for the soil, and a third of a litre a second of water-like fluid.
ThermalWishes plain_wishes() {
  ThermalWishes wishes;
  wishes.soil.source = SoilSource::typed;
  wishes.climate_source = ClimateSource::typed;
  wishes.years = 3;
  return wishes;
}

Temperatures solved(const Layout& layout, const ThermalWishes& wishes = plain_wishes()) {
  KernelShelf shelf;
  return solve_temperatures(pipes_in_ground(layout, {}), make_surroundings(wishes).value(), wishes,
                            {1400, 0.09, 5000, 150}, shelf);
}

std::vector<Trouble> troubles_of(const ThermalWishes& wishes) {
  return thermal_troubles(wishes);
}

}  // namespace

TEST(Temperatures, EveryMetreOfCoilsHeaderAndRunExchangesHeat) {
  const Layout layout = field_of(2);
  const double lines = 2 * (length(layout.header.legs[0]) + length(layout.run.line));  // supply and return
  EXPECT_NEAR(solved(layout).pipe, 2 * layout.trenches[0].coil.coil_length + lines, 1e-6);
}

TEST(Temperatures, MoreTrenchesAndWiderOnesNeverEnterColder) {
  double before = -1e9;
  for (int n : {2, 3, 4}) {
    const Temperatures t = solved(field_of(n));
    EXPECT_GT(t.simulation.coldest, before) << n;
    before = t.simulation.coldest;
  }
  EXPECT_GT(solved(field_of(4, 6)).simulation.coldest, before);
}

TEST(Temperatures, WetterGroundEntersWarmerInWinter) {
  ThermalWishes wet = plain_wishes();
  wet.soil.typed.conductivity = 2.0;
  wet.soil.typed.heat_capacity = 2.4e6 * 2.0 / 1.4;  // the same diffusivity, so the same undisturbed ground
  EXPECT_GT(solved(field_of(3), wet).simulation.coldest, solved(field_of(3)).simulation.coldest);
}

TEST(Temperatures, UndisturbedGroundSwingsAboutTheTypedMean) {
  const Temperatures t = solved(field_of(2));
  double sum = 0;
  for (double g : t.ground) sum += g / static_cast<double>(t.ground.size());
  EXPECT_NEAR(sum, ThermalWishes{}.climate.mean, 1e-3);
  EXPECT_LT(*std::max_element(t.ground.begin(), t.ground.end()), ThermalWishes{}.climate.mean + 11);
}

TEST(Temperatures, SaysWhatStopsIt) {
  EXPECT_TRUE(troubles_of(plain_wishes()).empty());
  EXPECT_TRUE(troubles_of({}).empty());
  ThermalWishes wishes = plain_wishes();
  wishes.soil.typed.conductivity = 0;
  EXPECT_EQ(troubles_of(wishes).at(0).thing, "Soil conductivity");
  EXPECT_FALSE(make_surroundings(wishes).has_value());
  wishes = {};
  wishes.soil.matter.saturation = 1.1;
  EXPECT_EQ(troubles_of(wishes).at(0).code, "soil_out_of_bounds");
  wishes = {};
  wishes.unit.heating[1].capacity = 100;
  EXPECT_EQ(troubles_of(wishes).at(0).code, "heat_pump_table");
  wishes = {};
  wishes.weather_source = WeatherSource::file;
  wishes.weather_file.outdoor.assign(8759, 3.0);
  EXPECT_EQ(troubles_of(wishes).at(0).value, "8759 hours");
}

TEST(Temperatures, TheGroundsWaveIsTheWeathersUnlessTyped) {
  ThermalWishes wishes;
  const auto made = make_surroundings(wishes).value();
  double mean = 0;
  for (double t : wishes.normals.mean) mean += t / 12;
  EXPECT_NEAR(made.climate.mean, mean, 0.2);
  EXPECT_NEAR(made.climate.coldest_day, 20, 20);
  wishes.climate_source = ClimateSource::typed;
  EXPECT_EQ(make_surroundings(wishes)->climate, wishes.climate);
}
