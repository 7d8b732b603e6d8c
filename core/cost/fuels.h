// SPDX-License-Identifier: GPL-3.0-or-later
// Fuels as they are sold, with what is published about them, and ways to heat and cool to begin with.
#pragma once

#include <string_view>
#include <vector>

#include "base/say.h"
#include "cost/pricing.h"

namespace underlawn {

struct Fuel {
  std::string_view name;    // "propane"
  std::string_view unit;    // "gal"
  double heat_content = 0;  // J a unit, higher heating value
  double emission = 0;      // kg CO2 a unit, of burning alone; of electricity its making
};
// Heat contents: US Energy Information Administration, units and calculators (1 gal heating oil 138,500 Btu,
// 1 gal propane 91,452 Btu, 1 therm 100,000 Btu, 1 kWh 3,412 Btu). Burning: EIA, carbon dioxide emissions
// coefficients 2016 (propane 5.76 and heating oil 10.16 kg a gallon, natural gas 53.07 kg a million Btu).
// Electricity: EPA eGRID 2022, United States, 823.1 lb a MWh (as EPA's equivalencies page has it); EIA's mean
// of 2022 is 0.86 lb a kWh. Upstream losses and other gases are not in these.
inline constexpr const char* kHeatContentSource = mark("EIA, units and calculators");
inline constexpr const char* kEmissionSource = mark("EIA, carbon dioxide emissions coefficients, 2016");
inline constexpr const char* kGridSource = mark("EPA eGRID 2022, United States");
const std::vector<Fuel>& fuels();

// Furnace of each fuel, electric resistance, each with central air; an air-source heat pump. Prices,
// efficiencies and first costs are round figures of our own, no source.
const std::vector<OtherSystem>& usual_systems();

}  // namespace underlawn
