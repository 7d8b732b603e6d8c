// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/fuels.h"

#include "base/say.h"
#include "cost/comparison.h"

namespace underlawn {

namespace {

constexpr double kBtu = 1055.05585262;  // J

OtherSystem system(std::string name, const Fuel& fuel, double price, double efficiency, double auxiliary,
                   double first_cost) {
  OtherSystem o;
  o.name = std::move(name);
  o.fuel = fuel.name;
  o.unit = fuel.unit;
  o.heat_content = fuel.heat_content;
  o.price = price;
  o.efficiency = efficiency;
  o.emission = fuel.emission;
  o.cooling = 3.8;
  o.auxiliary = auxiliary;
  o.first_cost = first_cost;
  o.maintenance = 150;
  return o;
}

}  // namespace

const std::vector<Fuel>& fuels() {
  static const std::vector<Fuel> all = {
      {mark("natural gas"), "therm", 100'000 * kBtu, 5.307},
      {mark("propane"), "gal", 91'452 * kBtu, 5.76},
      {mark("heating oil"), "gal", 138'500 * kBtu, 10.16},
      {mark("electricity"), "kWh", kKilowattHour, Running{}.electricity_emission},
  };
  return all;
}

const std::vector<OtherSystem>& usual_systems() {
  static const std::vector<OtherSystem> all = {
      system(mark("Gas furnace"), fuels()[0], 1.4, 0.92, 0.015, 12'000),
      system(mark("Propane furnace"), fuels()[1], 2.7, 0.92, 0.015, 12'500),
      system(mark("Oil furnace"), fuels()[2], 3.8, 0.85, 0.02, 13'000),
      system(mark("Electric furnace"), fuels()[3], Running{}.electricity, 1, 0.015, 10'000),
      system(mark("Air-source heat pump"), fuels()[3], Running{}.electricity, 2.5, 0, 14'000),
  };
  return all;
}

}  // namespace underlawn
