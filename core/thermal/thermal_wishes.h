// SPDX-License-Identifier: GPL-3.0-or-later
// What the temperatures of the loop follow from, besides the field itself.
#pragma once

#include <optional>

#include "ground/soil_wishes.h"
#include "ground/undisturbed.h"
#include "house/block_house.h"
#include "house/heat_pump.h"
#include "house/load.h"
#include "house/load_file.h"
#include "house/weather.h"

namespace underlawn {

enum class WeatherSource { normals, file };
enum class ClimateSource { weather, typed };
enum class LoadSource { design, block, hours };

struct ThermalWishes {
  SoilWishes soil;
  ClimateSource climate_source = ClimateSource::weather;
  GroundClimate climate;             // where typed
  double surface_resistance = 0.07;  // m2 K/W of grass and air: 0.04 bare and windy to 0.12 long grass
  WeatherSource weather_source = WeatherSource::normals;
  MonthlyNormals normals = normals_presets()[5];  // "Mixed humid"
  WeatherYear weather_file;                       // empty while none was read
  LoadSource load_source = LoadSource::design;
  DesignLoad load;  // where typed
  BlockHouse block;
  HourlyFile hours;  // empty while none was read
  HeatPump unit = generic_heat_pump();
  std::optional<double> fluid_resistance;  // m K/W of pipe wall and film, where measured or given
  double coldest_allowed = -1.1;           // deg C entering water: 30 F
  double warmest_allowed = 35;             // deg C: 95 F
  int years = 25;
  bool operator==(const ThermalWishes&) const = default;
};

}  // namespace underlawn
