// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/heat_pump.h"

#include <gtest/gtest.h>

#include <functional>
#include <limits>
#include <set>

#include "base/quantity.h"
#include "house/heat_pump_file.h"
#include "support/mutated_text.h"

using namespace underlawn;

namespace {

std::string refusal(const HeatPump& unit) {
  const auto ok = check_heat_pump(unit);
  return ok ? std::string("taken") : ok.error().thing;
}
std::string refusal(const std::string& text) {
  const auto unit = heat_pump_from_csv(text);
  return unit ? std::string("read") : unit.error().thing;
}
std::string swapped(std::string text, const std::string& from, const std::string& to) {
  return text.replace(text.find(from), from.size(), to);
}

}  // namespace

TEST(HeatPump, PresetsAreGenericOfTheirSizesAndSound) {
  std::set<std::string> names;
  const double ton = 12000 * 1055.05585262 / 3600;  // W: 12 000 Btu/h
  double tons = 2;
  for (const HeatPump& unit : heat_pump_presets()) {
    EXPECT_TRUE(check_heat_pump(unit)) << unit.name;
    EXPECT_NE(unit.name.find("Generic"), std::string::npos);
    EXPECT_NE(unit.name.find("no maker's"), std::string::npos);
    EXPECT_TRUE(names.insert(unit.name).second);
    // ISO 13256-1 rates cooling of a ground loop at 25 deg C entering; nominal tons are rounded.
    EXPECT_NEAR(performance_at(unit.cooling, 25).capacity, tons * ton, 0.1 * tons * ton);
    ++tons;
  }
  EXPECT_EQ(names.size(), 4u);
}

TEST(HeatPump, RefusesTablesThatNoMachineHas) {
  using Spoil = std::function<void(HeatPump&)>;
  const double inf = std::numeric_limits<double>::infinity();
  const std::vector<std::pair<std::string, Spoil>> cases = {
      {"heat pump table for heating", [](HeatPump& u) { u.heating.resize(1); }},
      {"heat pump table for cooling", [](HeatPump& u) { u.cooling.clear(); }},
      {"span of the heat pump table for heating", [](HeatPump& u) { u.heating.resize(2); }},
      {"heat pump table for heating, row 3", [](HeatPump& u) { u.heating[2].entering = 0; }},
      {"heat pump table for heating, row 6", [](HeatPump& u) { u.heating[5].entering = 77; }},
      {"heat pump table for cooling, row 2", [](HeatPump& u) { u.cooling[1].power = -5; }},
      {"heat pump table for cooling, row 2", [=](HeatPump& u) { u.cooling[1].capacity = inf; }},
      {"heat pump table for heating, row 4", [](HeatPump& u) { u.heating[3].capacity = 11000; }},
      {"heat pump table for cooling, row 4", [](HeatPump& u) { u.cooling[3].capacity = 12000; }},
      {"COP of heat pump table for heating, row 2", [](HeatPump& u) { u.heating[1].power = 4000; }},
      {"COP of heat pump table for cooling, row 3", [](HeatPump& u) { u.cooling[2].power = 1500; }},
      {"heating COP at " + print_quantity(Quantity::temperature, -5, UnitSystem::metric),
       [](HeatPump& u) {
         for (auto& p : u.heating) p.power *= 4;
       }},
      {"heating COP at " + print_quantity(Quantity::temperature, 20, UnitSystem::metric), [](HeatPump& u) {
         u.heating.clear();
         for (double t : {0.0, 10.0, 20.0}) u.heating.push_back({t, 10000 + 10 * t, 700 - 10 * t});
       }}};
  for (const auto& [thing, spoil] : cases) {
    HeatPump unit = generic_heat_pump();
    spoil(unit);
    EXPECT_EQ(refusal(unit), thing);
  }
}

TEST(HeatPump, RefusesPowerThatFallsOrZigzags) {
  HeatPump unit = generic_heat_pump();
  unit.cooling = {{10, 12000, 2000}, {20, 11000, 1900}, {30, 10000, 2400}};
  EXPECT_EQ(refusal(unit), "heat pump table for cooling, row 2");
  unit = generic_heat_pump();
  unit.heating = {{0, 9000, 3000}, {10, 12000, 3500}, {20, 12500, 3000}};
  EXPECT_EQ(refusal(unit), "heat pump table for heating, row 2");
  // Power that falls a little all the way is what some units do.
  unit.heating = {{0, 9000, 3000}, {10, 12000, 2950}, {20, 12500, 2900}};
  EXPECT_EQ(refusal(unit), "taken");
}

TEST(HeatPumpFile, ReadsUnitsOfTheTrade) {
  const auto unit = heat_pump_from_csv(
      "# name = Yard unit\nMode,Entering F,Capacity Btuh,Power kW,Flow gpm\n"
      "Heating,32,36000,3.2,9\nHeating,68,48000,3.6,9\nCooling,50,40000,1.8,9\nCooling,86,34000,2.9,9\n");
  ASSERT_TRUE(unit) << unit.error().message();
  EXPECT_EQ(unit->name, "Yard unit");
  EXPECT_NEAR(unit->heating[0].entering, 0, 1e-12);
  EXPECT_NEAR(unit->heating[1].entering, 20, 1e-12);
  EXPECT_NEAR(unit->heating[0].capacity, 10550.56, 0.01);  // 0.29307107 W each (NIST SP 811, B.8)
  EXPECT_EQ(unit->cooling[1].power, 2900);
}

TEST(HeatPumpFile, WhatIsWrittenReadsBackTheSame) {
  for (const HeatPump& unit : heat_pump_presets())
    EXPECT_EQ(heat_pump_from_csv(heat_pump_to_csv(unit)), unit);
}

TEST(HeatPumpFile, RefusalsNameTheLine) {
  const std::string good = heat_pump_to_csv(generic_heat_pump());
  EXPECT_EQ(refusal(std::string()), "heat pump table");
  EXPECT_EQ(refusal(swapped(good, "power_w", "power")),
            "line of column names in line 2 of the heat pump table");
  EXPECT_EQ(refusal(swapped(good, "entering_c", "capacity_kw")),
            "line of column names in line 2 of the heat pump table");
  EXPECT_EQ(refusal(swapped(good, "heating,0,", "drying,0,")), "mode in line 4 of the heat pump table");
  EXPECT_EQ(refusal(swapped(good, "heating,0,", "heating,cold,")),
            "entering_c in line 4 of the heat pump table");
  EXPECT_EQ(refusal(swapped(good, "10500", "")), "capacity_w in line 4 of the heat pump table");
  EXPECT_EQ(refusal(swapped(good, "3280", "nan")), "power_w in line 4 of the heat pump table");
  EXPECT_EQ(refusal(swapped(good, "3280", "-3280")), "heat pump table for heating, row 2");
}

// Seed 14.
TEST(HeatPumpFile, TenThousandSpoiledTextsAreReadOrRefused) {
  std::mt19937 random(14);
  const std::string good = heat_pump_to_csv(generic_heat_pump());
  int refused = 0;
  for (int i = 0; i < 10000; ++i) {
    const auto unit = heat_pump_from_csv(mutated(good, random));
    if (unit) {
      EXPECT_TRUE(check_heat_pump(*unit));
    } else {
      ++refused;
      EXPECT_FALSE(unit.error().message().empty());
    }
  }
  EXPECT_GT(refused, 1000);
  EXPECT_LT(refused, 10000);
}
