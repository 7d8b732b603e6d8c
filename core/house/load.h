// SPDX-License-Identifier: GPL-3.0-or-later
// What the house asks for, hour by hour, from its two design points.
#pragma once

#include <vector>

#include "base/result.h"
#include "house/weather.h"

namespace underlawn {

// Design conditions: the loss at the cold design day and the gain at the warm one, as a load calculation
// gives them. Heating falls in a straight line from the loss at `outdoor_cold` to nothing at
// `balance_heating`; cooling likewise from the gain at `outdoor_warm` to nothing at `balance_cooling` (the
// steady change-point form of degree-days, ASHRAE Fundamentals; the balance temperature is what gains carry).
// A load of 0 is 0 in every hour.
struct DesignLoad {
  double heat_loss = 8000;      // W
  double outdoor_cold = -10;    // deg C
  double balance_heating = 16;  // deg C
  double heat_gain = 7000;      // W, 0 for none
  double outdoor_warm = 33;     // deg C
  double balance_cooling = 20;  // deg C
  bool operator==(const DesignLoad&) const = default;
};

// Refuses: not finite, negative loads, a design day on the wrong side of its balance temperature (of a load
// that is not 0).
Result<void> check_load(const DesignLoad& load);

struct HourlyLoad {
  std::vector<double> heating;  // W, kWeatherHours values >= 0
  std::vector<double> cooling;
};
HourlyLoad hourly_load(const DesignLoad& load, const WeatherYear& weather);

}  // namespace underlawn
