// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/simulate_given.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "thermal/ground_memory.h"

namespace underlawn {
namespace {

constexpr double kHour = 3600;

void account(const HourState& s, double wall, int h, YearSum& year) {
  (s.ground_heat > 0 ? year.from_ground : year.to_ground) += std::abs(s.ground_heat) * kHour;
  year.hours_wall_frozen += wall < 0;
  year.meet(s.entering, h);
}

std::vector<double> daily_means(const std::vector<double>& hours) {
  std::vector<double> days(kYearHours / 24);
  for (int h = 0; h < kYearHours; ++h) days[h / 24] += hours[h] / 24;
  return days;
}

YearSum one_year(const LoopModel& loop, const std::vector<double>& load, GroundMemory& memory,
                 std::vector<HourState>& hours) {
  const double at_flow = loop.fluid_resistance / loop.pipe - 1 / (2 * loop.heat_flow_rate);
  YearSum year;
  for (int h = 0; h < kYearHours; ++h) {
    const double q = load[h];
    const double wall = loop.ground[h] - memory.fall() - memory.one_hour() * q;
    memory.learn(q);
    const double entering = q == 0 ? wall : wall - at_flow * q;
    hours[h] = {entering, q == 0 ? wall : entering - q / loop.heat_flow_rate, q, 0, 0, 0};
    if (q != 0) account(hours[h], wall, h, year);
  }
  return year;
}

}  // namespace

Simulation simulate_ground_load(const LoopModel& loop, const std::vector<double>& load, int years,
                                std::stop_token stop) {
  assert(loop.pipe > 0 && loop.heat_flow_rate > 0);
  assert(loop.ground.size() == kYearHours && load.size() == kYearHours);
  GroundMemory memory(loop.response, loop.pipe);
  Simulation out;
  std::vector<HourState> hours(kYearHours);
  const std::vector<double> days = daily_means(load);
  for (int y = 0; y < years && !stop.stop_requested(); ++y) {
    out.add(one_year(loop, load, memory, hours), hours, years);
    out.daily_heat.insert(out.daily_heat.end(), days.begin(), days.end());
  }
  return out;
}

}  // namespace underlawn
