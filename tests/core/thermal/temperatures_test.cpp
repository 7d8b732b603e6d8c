// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/temperatures.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "field/coil.h"

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

Temperatures solved(const Layout& layout, ThermalWishes wishes = {}) {
  wishes.years = 3;
  KernelShelf shelf;
  return solve_temperatures(layout, {}, wishes, shelf);
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
    ASSERT_TRUE(t.troubles.empty());
    EXPECT_GT(t.simulation.coldest, before) << n;
    before = t.simulation.coldest;
  }
  EXPECT_GT(solved(field_of(4, 6)).simulation.coldest, before);
}

TEST(Temperatures, WetterGroundEntersWarmerInWinter) {
  ThermalWishes wet;
  wet.soil.conductivity = 2.0;
  wet.soil.heat_capacity = 2.4e6 * 2.0 / 1.4;  // the same diffusivity, so the same undisturbed ground
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
  EXPECT_EQ(solved({}).troubles.at(0).code, "no_field");
  ThermalWishes wishes;
  wishes.soil.conductivity = 0;
  EXPECT_EQ(solved(field_of(2), wishes).troubles.at(0).thing, "soil conductivity");
  wishes = {};
  wishes.mass_fraction = 0.05;  // freezes before the coldest leaving water
  EXPECT_EQ(solved(field_of(2), wishes).troubles.at(0).code, "fluid_temperature");
  wishes = {};
  wishes.unit.heating[1].capacity = 100;
  EXPECT_EQ(solved(field_of(2), wishes).troubles.at(0).code, "heat_pump_table");
}
