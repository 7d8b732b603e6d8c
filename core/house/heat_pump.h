// SPDX-License-Identifier: GPL-3.0-or-later
// A heat pump as its performance table: capacity and electric power against the temperature of the water that
// enters.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"

namespace underlawn {

struct PerformancePoint {
  double entering = 0;  // deg C, water entering the heat pump from the loop
  double capacity = 0;  // W, heat to the house (heating) or from it (cooling)
  double power = 0;     // W, compressor, fan and controls; the loop's circulator is counted elsewhere
  bool operator==(const PerformancePoint&) const = default;
};

struct HeatPump {
  std::string name;
  std::vector<PerformancePoint> heating;  // entering temperatures rising
  std::vector<PerformancePoint> cooling;
  bool operator==(const HeatPump&) const = default;
};

// A unit of no maker, for a start: 10.5 kW heating at 0 deg C entering (COP 3.2), 11.4 kW cooling at 25 deg C
// (EER 15.5), at the rating points of ISO 13256-1 for ground loops. Numbers of our own, typical; say so where
// shown.
const HeatPump& generic_heat_pump();
// The same unit, `factor` times as large.
HeatPump scaled(const HeatPump& unit, double factor);

// Refuses: fewer than two points or more than 100, temperatures not rising, out of -30..70 deg C or spanning
// less than `kNarrowestTable`; a capacity or power not positive; as the water warms heating capacity that
// falls, cooling capacity that rises, a heating COP that falls or a cooling COP that rises by more than 2 %
// (a compressor works less against a smaller lift; rounding in tables is allowed for), cooling power that
// falls by more than 2 %, heating power that turns from rising to falling or back, each by more than 5 %; a
// heating COP of 1 or less or more than 20. The bounds are our own.
inline constexpr double kNarrowestTable = 10;  // K of entering temperature
Result<void> check_heat_pump(const HeatPump& unit);

// Linear between the points. Outside them the end value holds and `outside` is set: nothing is extrapolated
// in silence.
struct Performance {
  double capacity = 0;        // W
  double power = 0;           // W
  double capacity_slope = 0;  // W/K
  double power_slope = 0;     // W/K
  bool outside = false;
};
Performance performance_at(const std::vector<PerformancePoint>& table, double entering);

}  // namespace underlawn
