// SPDX-License-Identifier: GPL-3.0-or-later
// Where a pump and a system of pipes meet, and what that costs in power.
#pragma once

#include <functional>
#include <string_view>
#include <vector>

#include "flow/flow_wishes.h"

namespace underlawn {

// Head (m) that the pipes take at a flow (m3/s, > 0); rising.
using SystemCurve = std::function<double(double flow)>;

struct DutyPoint {
  double flow = 0;   // m3/s
  double head = 0;   // m
  double power = 0;  // W, electric
};

// The flow at which the pump gives what the pipes take: the root of pump_head - system, to 1e-10 of the flow.
// Refuses a pump without curve and one that moves nothing.
Result<DutyPoint> duty_point(const Circulator& pump, const SystemCurve& system);

// A slower pump by the affinity laws: head n^2 H(q/n), power n^3 P(q/n) at `speed` n.
struct SpeedPoint {
  double speed = 1;  // of full speed, <= 1
  double flow = 0;   // m3/s
  double head = 0;   // m, that the pipes take
  double power = 0;  // W; motor and drive as good as at full speed
};
// The speed that gives just this flow; refused above full speed.
Result<SpeedPoint> speed_for(const Circulator& pump, const SystemCurve& system, double flow);

// Installed pump power by heat pump capacity: to 5 hp per 100 tons (10.6 W/kW) excellent, 7.5 good, 10
// mediocre, 15 poor, above bad. Kavanaugh & Rafferty 2014, ASHRAE (5 and 7.5 as quoted, 10 and 15 from
// memory); theirs is power at the shaft, so electric power grades strictly.
inline constexpr double kHorsepowerPer100Tons = 745.7 / (100 * 3516.853);  // W/W
std::string pump_grade(double power, double capacity);

}  // namespace underlawn
