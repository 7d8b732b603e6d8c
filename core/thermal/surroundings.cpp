// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/surroundings.h"

#include <algorithm>

#include "base/say.h"

namespace underlawn {
namespace {

using Q = Quantity;

struct Troubles {
  UnitSystem units;
  std::vector<Trouble> all = {};

  void bounded(const std::string& thing, Quantity q, double v, double low, double high,
               const std::string& advice) {
    if (v >= low && v <= high) return;
    const auto shown = [&](double x) { return print_quantity(q, x, units, Fineness::fine); };
    all.push_back(
        {"thermal_out_of_bounds", thing, shown(v), say("from {} to {}", shown(low), shown(high)), advice});
  }
  template <class T>
  void refused(const Result<T>& result) {
    if (!result) all.push_back(result.error());
  }
};

void check_ground(Troubles& out, const ThermalWishes& w) {
  if (w.soil.source == SoilSource::typed) {
    out.bounded(say("Soil conductivity"), Q::conductivity, w.soil.typed.conductivity, 0.05, 10,
                say("Enter the soil's k: 0.5 dry to 2.5 saturated is usual."));
    out.bounded(say("Soil heat capacity"), Q::heat_capacity, w.soil.typed.heat_capacity, 5e5, 6e6,
                say("Enter it by volume: 1.3 dry to 2.8 saturated MJ/(m3 K) is usual."));
  } else {
    out.refused(soil_thermal(w.soil));
  }
  out.bounded(say("Surface resistance"), Q::surface_resistance, w.surface_resistance, 0, 1,
              say("Grass and air: 0.04 bare and windy to 0.12 long grass."));
  if (w.climate_source == ClimateSource::weather) return;
  out.bounded(say("Mean ground temperature"), Q::temperature, w.climate.mean, -10, 40,
              say("Enter the yearly mean at the surface."));
  out.bounded(say("Ground temperature swing"), Q::temperature_difference, w.climate.amplitude, 0, 40,
              say("Enter half of the yearly swing at the surface."));
  out.bounded(say("Coldest day of the ground's surface"), Q::count, w.climate.coldest_day, 0, 366,
              say("Enter a day of the year, 1 January is 1."));
}

void check_limits(Troubles& out, const ThermalWishes& w) {
  out.bounded(say("Coldest entering water allowed"), Q::temperature, w.coldest_allowed, -20, 20,
              say("Enter the limit of the heat pump; -4 to 2 C is usual."));
  out.bounded(say("Warmest entering water allowed"), Q::temperature, w.warmest_allowed, 15, 60,
              say("Enter the limit of the heat pump; 29 to 38 C is usual."));
  if (w.fluid_resistance)
    out.bounded(say("Resistance of pipe wall and film"), Q::resistance, *w.fluid_resistance, 0, 10,
                say("0.05 to 0.2 m K/W is usual; leave it empty to have it from the flow."));
  out.bounded(say("Design life"), Q::count, w.years, 1, 100, say("Enter years; 25 is usual."));
}

void check_weather(Troubles& out, const ThermalWishes& w) {
  if (w.weather_source == WeatherSource::normals) return out.refused(check_normals(w.normals));
  if (w.weather_file.outdoor.size() != static_cast<std::size_t>(kWeatherHours))
    out.all.push_back({"weather_file_missing", say("Weather file"),
                       say("{} hours", std::to_string(w.weather_file.outdoor.size())),
                       say("{} hours", std::to_string(kWeatherHours)),
                       say("Read a weather file, or make the year from monthly normals.")});
}

void check_house(Troubles& out, const ThermalWishes& w) {
  if (w.load_source == LoadSource::hours) {
    const HourlyFile& h = w.hours;
    const auto n = static_cast<std::size_t>(kYearHours);
    if (h.ground.size() != n && (h.heating.size() != n || h.cooling.size() != n))
      out.all.push_back({"load_file_missing", say("File of hourly loads"),
                         say("{} hours", std::to_string(std::max(h.heating.size(), h.ground.size()))),
                         say("{} hours", std::to_string(n)),
                         say("Read a file of hourly loads, or type design loads.")});
    return;
  }
  if (w.load_source == LoadSource::block) return out.refused(design_load_from_block(w.block));
  out.refused(check_load(w.load));
  out.bounded(say("Design heat loss"), Q::power, w.load.heat_loss, 0, 1e6,
              say("Enter the house's own, in W."));
  out.bounded(say("Design heat gain"), Q::power, w.load.heat_gain, 0, 1e6,
              say("Enter the house's own, in W."));
}

WeatherYear weather_of(const ThermalWishes& w) {
  return w.weather_source == WeatherSource::file ? w.weather_file : year_from_normals(w.normals).value();
}

// The surface follows the air: its yearly wave stands for the ground's own.
GroundClimate climate_of(const ThermalWishes& w, const WeatherYear& weather) {
  if (w.climate_source == ClimateSource::typed) return w.climate;
  const YearlyWave wave = yearly_wave(weather);
  return {wave.mean, wave.amplitude, wave.coldest_day};
}

}  // namespace

std::vector<Trouble> thermal_troubles(const ThermalWishes& w, UnitSystem units) {
  Troubles out{units};
  check_ground(out, w);
  check_limits(out, w);
  check_weather(out, w);
  check_house(out, w);
  out.refused(check_heat_pump(w.unit));
  return std::move(out.all);
}

std::optional<Surroundings> make_surroundings(const ThermalWishes& w) {
  if (!thermal_troubles(w).empty()) return std::nullopt;
  Surroundings s;
  s.soil = soil_thermal(w.soil).value();
  s.weather = weather_of(w);
  s.climate = climate_of(w, s.weather);
  if (w.load_source == LoadSource::hours) {
    s.house = {w.hours.heating, w.hours.cooling};
    s.ground_hours = w.hours.ground;
    return s;
  }
  s.load = w.load_source == LoadSource::block ? design_load_from_block(w.block).value() : w.load;
  const HourlyLoad load = hourly_load(s.load, s.weather);
  s.house = {load.heating, load.cooling};
  return s;
}

}  // namespace underlawn
