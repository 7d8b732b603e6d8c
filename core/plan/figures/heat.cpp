// SPDX-License-Identifier: GPL-3.0-or-later
// Ground, weather, house and heat pump: what the temperatures follow from.
#include <algorithm>
#include <numeric>

#include "base/say.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

std::string grain_words(Grain grain) {
  switch (grain) {
    case Grain::gravel:
      return say("gravel and coarse sand");
    case Grain::coarse:
      return say("medium and fine sand");
    case Grain::fine:
      return say("silt and clay");
  }
  return "";
}

void add_matter(Figures& all, const SoilWishes& s) {
  typed(all, "soil.porosity", say("Pores of the soil"), s.matter.porosity, Q::ratio);
  typed(all, "soil.quartz", say("Quartz of the solids"), s.matter.quartz, Q::ratio);
  typed(all, "soil.saturation", say("Water in the pores"), s.matter.saturation, Q::ratio);
  const std::vector<std::string> matter = {"soil.porosity", "soil.quartz", "soil.saturation"};
  struct Model {
    ConductivityModel model;
    const char* key;
  };
  for (const Model& m : {Model{ConductivityModel::johansen, "soil.conductivity.johansen"},
                         Model{ConductivityModel::lu, "soil.conductivity.lu"},
                         Model{ConductivityModel::cote_konrad, "soil.conductivity.cote_konrad"}}) {
    const auto k = conductivity(s.matter, m.model);
    if (!k) continue;
    const std::string name(model_name(m.model));
    derived(all, m.key, say("Soil conductivity by {}", name), *k, Q::conductivity,
            {say("k = k_dry + Ke (k_sat - k_dry), constants for {}", grain_words(s.matter.grain)), matter,
             std::string(model_source(m.model))});
    if (m.model == s.model)
      derived(all, "soil.conductivity", say("Soil conductivity used"), *k, Q::conductivity,
              {say("that of the model chosen, {}", name), {m.key}, std::string(model_source(m.model))});
  }
  derived(all, "soil.heat_capacity", say("Soil heat capacity"), heat_capacity(s.matter), Q::heat_capacity,
          {say("2.0 MJ/(m3 K) x solids + 4.18 MJ/(m3 K) x water, by volume"), matter,
           say("minerals 1.94 to 2.39 MJ/(m3 K) in tables after de Vries 1963; 2.0 taken")});
}

void add_soil(Figures& all, const ThermalWishes& t, const Surroundings& s) {
  if (t.soil.source == SoilSource::typed) {
    typed(all, "soil.conductivity", say("Soil conductivity"), s.soil.conductivity, Q::conductivity);
    typed(all, "soil.heat_capacity", say("Soil heat capacity"), s.soil.heat_capacity, Q::heat_capacity);
  } else {
    add_matter(all, t.soil);
  }
  derived(all, "soil.diffusivity", say("Soil diffusivity"), s.soil.diffusivity(), Q::diffusivity,
          {say("conductivity / heat capacity"), {"soil.conductivity", "soil.heat_capacity"}, ""});
  typed(all, "soil.surface_resistance", say("Resistance of grass and air"), t.surface_resistance,
        Q::surface_resistance);
}

void add_climate(Figures& all, const ThermalWishes& t, const Surroundings& s) {
  const auto [low, high] = std::minmax_element(s.weather.outdoor.begin(), s.weather.outdoor.end());
  typed(all, "weather.coldest", say("Coldest hour of the weather year, {}", translated(s.weather.name)), *low,
        Q::temperature);
  typed(all, "weather.warmest", say("Warmest hour of the weather year"), *high, Q::temperature);
  const auto add = [&](const std::string& key, const std::string& label, double value, Q quantity) {
    if (t.climate_source == ClimateSource::typed) return typed(all, key, label, value, quantity);
    derived(all, key, label, value, quantity,
            {say("yearly cosine through the hours of the weather year, least squares; the surface follows "
                 "the air"),
             {"weather.coldest", "weather.warmest"},
             ""});
  };
  add("climate.mean", say("Ground temperature, mean of the year"), s.climate.mean, Q::temperature);
  add("climate.amplitude", say("Ground temperature at the surface, half of its yearly swing"),
      s.climate.amplitude, Q::temperature_difference);
  add("climate.coldest_day", say("Day on which the surface is coldest"), s.climate.coldest_day, Q::count);
}

double sum(const std::vector<double>& watts) {
  return 3600 * std::accumulate(watts.begin(), watts.end(), 0.0);
}

// Loads that were read by the hour.
void add_hours(Figures& all, const Surroundings& s) {
  typed(all, "house.heating", say("Heat the house needs in a year, from the file"), sum(s.house.heating),
        Q::energy);
  typed(all, "house.cooling", say("Cooling the house needs in a year, from the file"), sum(s.house.cooling),
        Q::energy);
}

void add_house(Figures& all, const Surroundings& s) {
  const DesignLoad& l = s.load;
  typed(all, "house.heat_loss", say("Design heat loss"), l.heat_loss, Q::power);
  typed(all, "house.outdoor_cold", say("Outdoor air of the cold design day"), l.outdoor_cold, Q::temperature);
  typed(all, "house.balance_heating", say("Outdoor air above which no heat is needed"), l.balance_heating,
        Q::temperature);
  typed(all, "house.heat_gain", say("Design heat gain"), l.heat_gain, Q::power);
  typed(all, "house.outdoor_warm", say("Outdoor air of the warm design day"), l.outdoor_warm, Q::temperature);
  typed(all, "house.balance_cooling", say("Outdoor air below which no cooling is needed"), l.balance_cooling,
        Q::temperature);
  const std::string source = say("change-point form of degree-days, ASHRAE Fundamentals (from memory)");
  derived(all, "house.heating", say("Heat the house needs in a year"), sum(s.house.heating), Q::energy,
          {say("sum over the hours of loss x (balance - outdoor) / (balance - outdoor of the design day)"),
           {"house.heat_loss", "house.balance_heating", "house.outdoor_cold", "weather.coldest"},
           source});
  derived(all, "house.cooling", say("Cooling the house needs in a year"), sum(s.house.cooling), Q::energy,
          {say("sum over the hours of gain x (outdoor - balance) / (outdoor of the design day - balance)"),
           {"house.heat_gain", "house.balance_cooling", "house.outdoor_warm", "weather.warmest"},
           source});
}

void add_unit(Figures& all, const ThermalWishes& t) {
  const Performance cold = performance_at(t.unit.heating, 0), warm = performance_at(t.unit.cooling, 25);
  typed(all, "unit.heating_capacity", say("Heat pump, heat at 0 °C entering water"), cold.capacity, Q::power);
  typed(all, "unit.heating_power", say("Heat pump, power at 0 °C entering water"), cold.power, Q::power);
  typed(all, "unit.cooling_capacity", say("Heat pump, cooling at 25 °C entering water"), warm.capacity,
        Q::power);
  typed(all, "unit.cooling_power", say("Heat pump, power in cooling at 25 °C"), warm.power, Q::power);
  typed(all, "heat.coldest_allowed", say("Coldest entering water allowed"), t.coldest_allowed,
        Q::temperature);
  typed(all, "heat.warmest_allowed", say("Warmest entering water allowed"), t.warmest_allowed,
        Q::temperature);
  typed(all, "heat.years", say("Design life in years"), t.years, Q::count);
}

}  // namespace

void add_heat(Figures& all, const Plan& plan, const Outcome& outcome) {
  add_soil(all, plan.thermal, *outcome.surroundings);
  add_climate(all, plan.thermal, *outcome.surroundings);
  if (plan.thermal.load_source == LoadSource::hours)
    add_hours(all, *outcome.surroundings);
  else
    add_house(all, *outcome.surroundings);
  add_unit(all, plan.thermal);
}

}  // namespace underlawn::figures
