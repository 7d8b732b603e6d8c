// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/units.h"

#include <cmath>
#include <numbers>

#include "base/say.h"

namespace underlawn {

namespace {

constexpr double kInch = 0.0254;
constexpr double kFoot = 0.3048;
constexpr double kYard = 0.9144;
constexpr double kAcre = 43'560 * kFoot * kFoot;
constexpr double kGallon = 231 * kInch * kInch * kInch;  // US
constexpr double kPound = 0.45359237;
constexpr double kPsi = kPound * 9.80665 / (kInch * kInch);
constexpr double kBtu = 1055.05585262;  // international table
constexpr double kDegree = std::numbers::pi / 180;
constexpr double kFahrenheit = 5.0 / 9.0;
constexpr double kFreezing = -32 * kFahrenheit;  // 0 deg F in deg C

using Q = Quantity;

constexpr Unit kUnits[] = {
    {Q::ratio, "%", 0.01},
    {Q::length, "m", 1},
    {Q::length, "metre", 1},
    {Q::length, "metres", 1},
    {Q::length, "meter", 1},
    {Q::length, "meters", 1},
    {Q::length, "cm", 0.01},
    {Q::length, "mm", 0.001},
    {Q::length, "km", 1000},
    {Q::length, "'", kFoot},
    {Q::length, "ft", kFoot},
    {Q::length, "ft.", kFoot},
    {Q::length, "foot", kFoot},
    {Q::length, "feet", kFoot},
    {Q::length, "\"", kInch},
    {Q::length, "in", kInch},
    {Q::length, "in.", kInch},
    {Q::length, "inch", kInch},
    {Q::length, "inches", kInch},
    {Q::length, "yd", kYard},
    {Q::length, "yard", kYard},
    {Q::length, "yards", kYard},
    {Q::area, "m2", 1},
    {Q::area, "m^2", 1},
    {Q::area, "sq m", 1},
    {Q::area, "ha", 10'000},
    {Q::area, "ft2", kFoot* kFoot},
    {Q::area, "ft^2", kFoot* kFoot},
    {Q::area, "sq ft", kFoot* kFoot},
    {Q::area, "sf", kFoot* kFoot},
    {Q::area, "square feet", kFoot* kFoot},
    {Q::area, "in2", kInch* kInch},
    {Q::area, "sq in", kInch* kInch},
    {Q::area, "yd2", kYard* kYard},
    {Q::area, "sq yd", kYard* kYard},
    {Q::area, "ac", kAcre},
    {Q::area, "acre", kAcre},
    {Q::area, "acres", kAcre},
    {Q::volume, "m3", 1},
    {Q::volume, "m^3", 1},
    {Q::volume, "cu m", 1},
    {Q::volume, "yd3", kYard* kYard* kYard},
    {Q::volume, "yd^3", kYard* kYard* kYard},
    {Q::volume, "cu yd", kYard* kYard* kYard},
    {Q::volume, "cy", kYard* kYard* kYard},
    {Q::volume, "cubic yards", kYard* kYard* kYard},
    {Q::volume, "ft3", kFoot* kFoot* kFoot},
    {Q::volume, "ft^3", kFoot* kFoot* kFoot},
    {Q::volume, "cu ft", kFoot* kFoot* kFoot},
    {Q::volume, "cf", kFoot* kFoot* kFoot},
    {Q::volume, "cubic feet", kFoot* kFoot* kFoot},
    {Q::volume, "L", 0.001},
    {Q::fluid_volume, "L", 0.001},
    {Q::fluid_volume, "litre", 0.001},
    {Q::fluid_volume, "litres", 0.001},
    {Q::fluid_volume, "liter", 0.001},
    {Q::fluid_volume, "liters", 0.001},
    {Q::fluid_volume, "mL", 1e-6},
    {Q::fluid_volume, "m3", 1},
    {Q::fluid_volume, "gal", kGallon},
    {Q::fluid_volume, "gallon", kGallon},
    {Q::fluid_volume, "gallons", kGallon},
    {Q::fluid_volume, "US gal", kGallon},
    {Q::fluid_volume, "ft3", kFoot* kFoot* kFoot},
    {Q::fluid_volume, "cu ft", kFoot* kFoot* kFoot},
    {Q::angle, "deg", kDegree},
    {Q::angle, "degrees", kDegree},
    {Q::angle, "rad", 1},
    {Q::slope, ":1", 1},
    {Q::slope, "h per v", 1},
    {Q::duration, "s", 1},
    {Q::duration, "sec", 1},
    {Q::duration, "min", 60},
    {Q::duration, "h", 3600},
    {Q::duration, "hr", 3600},
    {Q::duration, "hour", 3600},
    {Q::duration, "hours", 3600},
    {Q::duration, "d", 86'400},
    {Q::duration, "day", 86'400},
    {Q::duration, "days", 86'400},
    {Q::velocity, "m/s", 1},
    {Q::velocity, "ft/s", kFoot},
    {Q::velocity, "fps", kFoot},
    {Q::velocity, "ft/min", kFoot / 60},
    {Q::velocity, "fpm", kFoot / 60},
    {Q::velocity, "km/h", 1 / 3.6},
    {Q::flow, "L/s", 0.001},
    {Q::flow, "L/min", 0.001 / 60},
    {Q::flow, "L/h", 0.001 / 3600},
    {Q::flow, "m3/s", 1},
    {Q::flow, "m3/h", 1.0 / 3600},
    {Q::flow, "gpm", kGallon / 60},
    {Q::flow, "gal/min", kGallon / 60},
    {Q::flow, "US gpm", kGallon / 60},
    {Q::pressure, "Pa", 1},
    {Q::pressure, "kPa", 1000},
    {Q::pressure, "MPa", 1e6},
    {Q::pressure, "bar", 1e5},
    {Q::pressure, "mbar", 100},
    {Q::pressure, "psi", kPsi},
    {Q::pressure, "psig", kPsi},
    {Q::pressure, "lb/in2", kPsi},
    {Q::head, "m", 1},
    {Q::head, "cm", 0.01},
    {Q::head, "mm", 0.001},
    {Q::head, "ft", kFoot},
    {Q::head, "'", kFoot},
    {Q::head, "in", kInch},
    {Q::head, "\"", kInch},
    {Q::temperature, "C", 1},
    {Q::temperature, "deg C", 1},
    {Q::temperature, "F", kFahrenheit, kFreezing},
    {Q::temperature, "deg F", kFahrenheit, kFreezing},
    {Q::temperature, "K", 1, -273.15},
    {Q::temperature_difference, "K", 1},
    {Q::temperature_difference, "C", 1},
    {Q::temperature_difference, "deg C", 1},
    {Q::temperature_difference, "F", kFahrenheit},
    {Q::temperature_difference, "deg F", kFahrenheit},
    {Q::power, "W", 1},
    {Q::power, "kW", 1000},
    {Q::power, "MW", 1e6},
    {Q::power, "Btu/h", kBtu / 3600},
    {Q::power, "Btu/hr", kBtu / 3600},
    {Q::power, "Btuh", kBtu / 3600},
    {Q::power, "kBtu/h", 1000 * kBtu / 3600},
    {Q::power, "MBH", 1000 * kBtu / 3600},
    {Q::power, "ton", 12'000 * kBtu / 3600},  // of refrigeration
    {Q::power, "tons", 12'000 * kBtu / 3600},
    {Q::power, "hp", 550 * kFoot* kPound * 9.80665},
    {Q::energy, "J", 1},
    {Q::energy, "kJ", 1000},
    {Q::energy, "MJ", 1e6},
    {Q::energy, "GJ", 1e9},
    {Q::energy, "Wh", 3600},
    {Q::energy, "kWh", 3.6e6},
    {Q::energy, "MWh", 3.6e9},
    {Q::energy, "Btu", kBtu},
    {Q::energy, "kBtu", 1000 * kBtu},
    {Q::energy, "MMBtu", 1e6 * kBtu},
    {Q::energy, "therm", 1e5 * kBtu},
    {Q::energy, "therms", 1e5 * kBtu},
    {Q::mass, "kg", 1},
    {Q::mass, "g", 0.001},
    {Q::mass, "t", 1000},
    {Q::mass, "lb", kPound},
    {Q::mass, "lbs", kPound},
    {Q::mass, "oz", kPound / 16},
    {Q::mass, "ton", 2000 * kPound},  // short
    {Q::mass, "tons", 2000 * kPound},
    {Q::density, "kg/m3", 1},
    {Q::density, "g/cm3", 1000},
    {Q::density, "lb/ft3", kPound / (kFoot * kFoot * kFoot)},
    {Q::density, "pcf", kPound / (kFoot * kFoot * kFoot)},
    {Q::conductivity, "W/(m*K)", 1},
    {Q::conductivity, "W/(m K)", 1},
    {Q::conductivity, "W/m*K", 1},
    {Q::conductivity, "W/m K", 1},
    {Q::conductivity, "Btu/(h*ft*deg F)", kBtu / 3600 / (kFoot * kFahrenheit)},
    {Q::conductivity, "Btu/(h ft F)", kBtu / 3600 / (kFoot * kFahrenheit)},
    {Q::conductivity, "Btu/h*ft*F", kBtu / 3600 / (kFoot * kFahrenheit)},
    {Q::resistance, "m*K/W", 1},
    {Q::resistance, "m K/W", 1},
    {Q::resistance, "h*ft*deg F/Btu", 3600 / kBtu*(kFoot* kFahrenheit)},
    {Q::resistance, "h ft F/Btu", 3600 / kBtu*(kFoot* kFahrenheit)},
    {Q::surface_resistance, "m2*K/W", 1},
    {Q::surface_resistance, "m2 K/W", 1},
    {Q::surface_resistance, "h*ft2*deg F/Btu", 3600 / kBtu*(kFoot* kFoot* kFahrenheit)},
    {Q::surface_resistance, "h ft2 F/Btu", 3600 / kBtu*(kFoot* kFoot* kFahrenheit)},
    {Q::u_value, "W/(m2*K)", 1},
    {Q::u_value, "W/(m2 K)", 1},
    {Q::u_value, "W/m2 K", 1},
    {Q::u_value, "Btu/(h*ft2*deg F)", kBtu / 3600 / (kFoot * kFoot * kFahrenheit)},
    {Q::u_value, "Btu/(h ft2 F)", kBtu / 3600 / (kFoot * kFoot * kFahrenheit)},
    {Q::heat_capacity, "MJ/(m3*K)", 1e6},
    {Q::heat_capacity, "MJ/(m3 K)", 1e6},
    {Q::heat_capacity, "kJ/(m3 K)", 1000},
    {Q::heat_capacity, "J/(m3 K)", 1},
    {Q::heat_capacity, "Btu/(ft3*deg F)", kBtu / (kFoot * kFoot * kFoot * kFahrenheit)},
    {Q::heat_capacity, "Btu/(ft3 F)", kBtu / (kFoot * kFoot * kFoot * kFahrenheit)},
    {Q::diffusivity, "mm2/s", 1e-6},
    {Q::diffusivity, "m2/s", 1},
    {Q::diffusivity, "m2/day", 1 / 86'400.0},
    {Q::diffusivity, "ft2/day", kFoot* kFoot / 86'400},
};

constexpr UnitSystem kMetric = UnitSystem::metric;
constexpr UnitSystem kUs = UnitSystem::us;

constexpr ShownUnit kShown[] = {
    {Q::count, kMetric, "", 1, 0, {0, 1, 3}, 0, true},
    {Q::count, kUs, "", 1, 0, {0, 1, 3}, 0, true},
    {Q::ratio, kMetric, " %", 0.01, 0, {0, 1, 2}, 0, true},
    {Q::ratio, kUs, " %", 0.01, 0, {0, 1, 2}, 0, true},
    {Q::length, kMetric, " m", 1, 0, {2, 2, 3}},
    {Q::length, kUs, " ft", kFoot, 0, {0, 1, 2}},  // for bare numbers; print_quantity writes
                                                   // feet-inches
    {Q::diameter, kMetric, " mm", 0.001, 0, {0, 1, 2}, 0, true},
    {Q::diameter, kUs, " in", kInch, 0, {0, 2, 3}, 0, true},
    {Q::area, kMetric, " m²", 1, 0, {0, 1, 2}},
    {Q::area, kMetric, " ha", 10'000, 0, {2, 3, 4}, 10'000},
    {Q::area, kUs, " sq ft", kFoot* kFoot, 0, {0, 0, 1}},
    {Q::area, kUs, " acres", kAcre, 0, {2, 3, 4}, 1.05 * kAcre},
    {Q::volume, kMetric, " m³", 1, 0, {0, 1, 2}},
    {Q::volume, kUs, " cu yd", kYard* kYard* kYard, 0, {0, 1, 2}},
    {Q::fluid_volume, kMetric, " L", 0.001, 0, {0, 1, 2}},
    {Q::fluid_volume, kUs, " gal", kGallon, 0, {0, 1, 2}},
    {Q::angle, kMetric, "°", kDegree, 0, {0, 1, 2}},
    {Q::angle, kUs, "°", kDegree, 0, {0, 1, 2}},
    {Q::slope, kMetric, ":1", 1, 0, {2, 2, 3}, 0, true},
    {Q::slope, kUs, ":1", 1, 0, {2, 2, 3}, 0, true},
    {Q::duration, kMetric, " h", 3600, 0, {0, 1, 2}},
    {Q::duration, kMetric, " s", 1, 0, {0, 1, 2}, 1, true},
    {Q::duration, kMetric, " min", 60, 0, {0, 1, 2}, 120, true},
    {Q::duration, kMetric, " h", 3600, 0, {0, 1, 2}, 3600},
    {Q::duration, kMetric, " d", 86'400, 0, {0, 1, 2}, 3 * 86'400},
    {Q::duration, kUs, " h", 3600, 0, {0, 1, 2}},
    {Q::duration, kUs, " s", 1, 0, {0, 1, 2}, 1, true},
    {Q::duration, kUs, " min", 60, 0, {0, 1, 2}, 120, true},
    {Q::duration, kUs, " h", 3600, 0, {0, 1, 2}, 3600},
    {Q::duration, kUs, " d", 86'400, 0, {0, 1, 2}, 3 * 86'400},
    {Q::velocity, kMetric, " m/s", 1, 0, {1, 2, 3}},
    {Q::velocity, kUs, " ft/s", kFoot, 0, {1, 2, 3}},
    {Q::flow, kMetric, " L/s", 0.001, 0, {1, 2, 3}},
    {Q::flow, kUs, " gpm", kGallon / 60, 0, {0, 1, 2}},
    {Q::pressure, kMetric, " kPa", 1000, 0, {0, 1, 2}},
    {Q::pressure, kUs, " psi", kPsi, 0, {0, 1, 2}},
    {Q::head, kMetric, " m", 1, 0, {1, 2, 3}},
    {Q::head, kUs, " ft", kFoot, 0, {0, 1, 2}},
    {Q::temperature, kMetric, " °C", 1, 0, {0, 1, 2}},
    {Q::temperature, kUs, " °F", kFahrenheit, kFreezing, {0, 1, 2}},
    {Q::temperature_difference, kMetric, " K", 1, 0, {0, 1, 2}},
    {Q::temperature_difference, kUs, " °F", kFahrenheit, 0, {0, 1, 2}},
    {Q::power, kMetric, " kW", 1000, 0, {1, 2, 3}},
    {Q::power, kUs, " Btu/h", kBtu / 3600, 0, {0, 0, 1}},
    {Q::energy, kMetric, " kWh", 3.6e6, 0, {0, 1, 2}},
    {Q::energy, kUs, " kWh", 3.6e6, 0, {0, 1, 2}},
    {Q::mass, kMetric, " kg", 1, 0, {0, 1, 2}},
    {Q::mass, kUs, " lb", kPound, 0, {0, 1, 2}},
    {Q::density, kMetric, " kg/m³", 1, 0, {0, 0, 1}},
    {Q::density, kUs, " lb/ft³", kPound / (kFoot * kFoot * kFoot), 0, {0, 1, 2}},
    {Q::conductivity, kMetric, " W/(m·K)", 1, 0, {1, 2, 3}},
    {Q::conductivity, kUs, " Btu/(h·ft·°F)", kBtu / 3600 / (kFoot * kFahrenheit), 0, {2, 3, 4}},
    {Q::resistance, kMetric, " m·K/W", 1, 0, {2, 3, 4}},
    {Q::resistance, kUs, " h·ft·°F/Btu", 3600 / kBtu*(kFoot* kFahrenheit), 0, {2, 3, 4}},
    {Q::surface_resistance, kMetric, " m²·K/W", 1, 0, {2, 3, 4}},
    {Q::surface_resistance, kUs, " h·ft²·°F/Btu", 3600 / kBtu*(kFoot* kFoot* kFahrenheit), 0, {2, 3, 4}},
    {Q::u_value, kMetric, " W/(m²·K)", 1, 0, {1, 2, 3}},
    {Q::u_value, kUs, " Btu/(h·ft²·°F)", kBtu / 3600 / (kFoot * kFoot * kFahrenheit), 0, {2, 3, 4}},
    {Q::heat_capacity, kMetric, " MJ/(m³·K)", 1e6, 0, {1, 2, 3}},
    {Q::heat_capacity, kUs, " Btu/(ft³·°F)", kBtu / (kFoot * kFoot * kFoot * kFahrenheit), 0, {1, 1, 2}},
    {Q::diffusivity, kMetric, " mm²/s", 1e-6, 0, {2, 3, 4}},
    {Q::diffusivity, kUs, " ft²/day", kFoot* kFoot / 86'400, 0, {2, 3, 4}},
    {Q::money, kMetric, "", 1, 0, {0, 2, 2}},
    {Q::money, kUs, "", 1, 0, {0, 2, 2}},
};

}  // namespace

std::span<const Unit> units() {
  return kUnits;
}

std::span<const ShownUnit> shown_units() {
  return kShown;
}

const ShownUnit& bare_unit(Quantity q, UnitSystem system) {
  return shown_unit(q, system, 0);
}

const ShownUnit& shown_unit(Quantity q, UnitSystem system, double si) {
  const ShownUnit* best = &kShown[0];
  for (const ShownUnit& u : kShown)
    if (u.quantity == q && u.system == system && std::abs(si) >= u.from) best = &u;
  return *best;
}

std::string_view si_symbol(Quantity q) {
  switch (q) {
    case Q::count:
    case Q::ratio:
    case Q::slope:
      return "1";
    case Q::length:
    case Q::diameter:
    case Q::head:
      return "m";
    case Q::area:
      return "m2";
    case Q::volume:
    case Q::fluid_volume:
      return "m3";
    case Q::angle:
      return "rad";
    case Q::duration:
      return "s";
    case Q::velocity:
      return "m/s";
    case Q::flow:
      return "m3/s";
    case Q::pressure:
      return "Pa";
    case Q::temperature:
      return "deg C";
    case Q::temperature_difference:
      return "K";
    case Q::power:
      return "W";
    case Q::energy:
      return "J";
    case Q::mass:
      return "kg";
    case Q::density:
      return "kg/m3";
    case Q::conductivity:
      return "W/(m K)";
    case Q::resistance:
      return "m K/W";
    case Q::surface_resistance:
      return "m2 K/W";
    case Q::u_value:
      return "W/(m2 K)";
    case Q::heat_capacity:
      return "J/(m3 K)";
    case Q::diffusivity:
      return "m2/s";
    case Q::money:
      return "currency";
  }
  return "1";
}

std::string quantity_name(Quantity q) {
  switch (q) {
    case Q::count:
      return say("number");
    case Q::ratio:
      return say("share");
    case Q::length:
      return say("length");
    case Q::diameter:
      return say("diameter");
    case Q::area:
      return say("area");
    case Q::volume:
    case Q::fluid_volume:
      return say("volume");
    case Q::angle:
      return say("angle");
    case Q::slope:
      return say("slope");
    case Q::duration:
      return say("duration");
    case Q::velocity:
      return say("velocity");
    case Q::flow:
      return say("flow");
    case Q::pressure:
      return say("pressure");
    case Q::head:
      return say("head");
    case Q::temperature:
      return say("temperature");
    case Q::temperature_difference:
      return say("temperature difference");
    case Q::power:
      return say("power");
    case Q::energy:
      return say("energy");
    case Q::mass:
      return say("mass");
    case Q::density:
      return say("density");
    case Q::conductivity:
      return say("conductivity");
    case Q::resistance:
      return say("thermal resistance");
    case Q::surface_resistance:
      return say("thermal resistance of a surface");
    case Q::u_value:
      return say("U-value");
    case Q::heat_capacity:
      return say("heat capacity");
    case Q::diffusivity:
      return say("thermal diffusivity");
    case Q::money:
      return say("amount of money");
  }
  return say("number");
}

std::string quantity_example(Quantity q) {
  switch (q) {
    case Q::count:
      return "4";
    case Q::ratio:
      return "25 %";
    case Q::length:
      return say("6'-3 1/2\", 1.9 m or 12 ft + 3 in");
    case Q::diameter:
      return say("1-1/4 in or 32 mm");
    case Q::area:
      return say("450 sq ft, 0.5 acre or 30 ft * 15 ft");
    case Q::volume:
      return say("66.7 cu yd or 51 m3");
    case Q::fluid_volume:
      return say("38 gal or 144 L");
    case Q::angle:
      return "45 deg";
    case Q::slope:
      return "1.5:1";
    case Q::duration:
      return say("1.5 h or 90 min");
    case Q::velocity:
      return say("2 ft/s or 0.6 m/s");
    case Q::flow:
      return say("12 gpm or 0.76 L/s");
    case Q::pressure:
      return say("60 psi or 414 kPa");
    case Q::head:
      return say("20 ft or 6.1 m");
    case Q::temperature:
      return say("50 °F or 10 °C");
    case Q::temperature_difference:
      return "10 °F or 5.6 K";
    case Q::power:
      return say("36000 Btu/h, 3 tons or 10.5 kW");
    case Q::energy:
      return "12000 kWh";
    case Q::mass:
      return say("50 lb or 23 kg");
    case Q::density:
      return say("100 lb/ft3 or 1600 kg/m3");
    case Q::conductivity:
      return "1.7 W/(m K)";
    case Q::resistance:
      return "0.1 m K/W";
    case Q::surface_resistance:
      return "0.07 m2 K/W";
    case Q::u_value:
      return "0.3 W/(m2 K)";
    case Q::heat_capacity:
      return "2.4 MJ/(m3 K)";
    case Q::diffusivity:
      return "0.6 mm2/s";
    case Q::money:
      return "1250.50";
  }
  return "4";
}

}  // namespace underlawn
