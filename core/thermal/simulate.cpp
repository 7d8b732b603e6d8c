// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/simulate.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace underlawn {
namespace {

constexpr double kHour = 3600;

// The ground's memory: each exponential forgets at its own rate and learns this hour's heat.
class Memory {
 public:
  explicit Memory(const ExponentialSum& sum) : left_(sum.size.size(), 0.0) {
    for (std::size_t i = 0; i < sum.size.size(); ++i) {
      keep_.push_back(std::exp(-kHour / sum.tau[i]));
      gain_.push_back(-sum.size[i] * std::expm1(-kHour / sum.tau[i]));
      one_hour_ += gain_.back();
    }
  }
  // Fall of the wall at the end of this hour from the hours before it, K.
  double recall() {
    double sum = 0;
    for (std::size_t i = 0; i < left_.size(); ++i) sum += left_[i] *= keep_[i];
    return sum;
  }
  void learn(double q) {
    for (std::size_t i = 0; i < left_.size(); ++i) left_[i] += gain_[i] * q;
  }
  double one_hour() const { return one_hour_; }  // R(1 h), m K/W

 private:
  std::vector<double> keep_, gain_, left_;
  double one_hour_ = 0;
};

// What the unit does in an hour at one entering temperature.
struct Duty {
  double run = 0;         // fraction of the hour
  double full = 0;        // W taken from the ground at full run; negative in cooling
  double full_slope = 0;  // W/K
  double capacity = 0;
  double power = 0;  // W at full run
  bool outside = false;
};

Duty duty_at(const HeatPump& unit, double heating, double cooling, double entering) {
  Duty d;
  const bool warm = heating >= cooling;
  const double load = warm ? heating : cooling;
  const Performance p = performance_at(warm ? unit.heating : unit.cooling, entering);
  d.run = std::min(1.0, load / p.capacity);
  d.full = warm ? p.capacity - p.power : -(p.capacity + p.power);
  d.full_slope = warm ? p.capacity_slope - p.power_slope : -(p.capacity_slope + p.power_slope);
  d.capacity = p.capacity;
  d.power = p.power;
  d.outside = p.outside;
  return d;
}

class Simulator {
 public:
  explicit Simulator(const SimulationInput& in)
      : in_(in),
        memory_(in.loop.response),
        at_full_(in.loop.fluid_resistance / in.loop.pipe - 1 / (2 * in.loop.heat_flow_rate)),
        at_mean_(memory_.one_hour() / in.loop.pipe),
        guess_(in.loop.ground.front()) {}

  HourState hour(int h, YearSum& year) {
    const double before = in_.loop.ground[h] - memory_.recall();
    const double heating = in_.house.heating[h], cooling = in_.house.cooling[h];
    if (heating <= 0 && cooling <= 0) return rest(before);
    const Duty duty = settle(before, heating, cooling);
    memory_.learn(duty.run * duty.full / in_.loop.pipe);
    const double wall = before - at_mean_ * duty.run * duty.full;
    return account(duty, wall, heating, cooling, h, year);
  }

 private:
  HourState rest(double wall) {
    memory_.learn(0);
    guess_ = wall;
    return {wall, wall, 0, 0, 0, 0};
  }

  // Newton on the entering temperature; the load's sign keeps the slope small, so two or three steps settle
  // it.
  Duty settle(double before, double heating, double cooling) {
    Duty duty;
    for (int i = 0; i < 8; ++i) {
      duty = duty_at(in_.unit, heating, cooling, guess_);
      const double run = duty.run, pull = at_mean_ * run + at_full_;
      const double residual = before - pull * duty.full - guess_;
      const double step = residual / (1 + pull * duty.full_slope);
      guess_ += step;
      if (std::abs(step) < 1e-6) break;
    }
    return duty_at(in_.unit, heating, cooling, guess_);
  }

  HourState account(const Duty& d, double wall, double heating, double cooling, int h, YearSum& year) const {
    const bool warm = heating >= cooling;
    HourState s;
    s.entering = guess_;
    s.leaving = guess_ - d.full / in_.loop.heat_flow_rate;
    s.ground_heat = d.run * d.full;
    s.power = d.run * (d.power + in_.pump_power);
    s.backup = warm ? std::max(0.0, heating - d.capacity) : heating;
    s.unmet_cooling = warm ? cooling : std::max(0.0, cooling - d.capacity);
    year.heating += heating * kHour;
    year.cooling += cooling * kHour;
    (warm ? year.from_ground : year.to_ground) += std::abs(s.ground_heat) * kHour;
    (warm ? year.heating_power : year.cooling_power) += d.run * d.power * kHour;
    year.pump_power += d.run * in_.pump_power * kHour;
    year.backup += s.backup * kHour;
    year.unmet_cooling += s.unmet_cooling * kHour;
    if (s.entering < year.coldest) {
      year.coldest = s.entering;
      year.coldest_hour = h;
    }
    if (s.entering > year.warmest) {
      year.warmest = s.entering;
      year.warmest_hour = h;
    }
    year.hours_outside_table += d.outside;
    year.hours_wall_frozen += wall < 0;
    return s;
  }

  const SimulationInput& in_;
  Memory memory_;
  double at_full_;  // K/W between wall and entering water, of the heat at full run
  double at_mean_;  // K/W of the wall in this hour, of the hour's mean heat
  double guess_;
};

}  // namespace

Simulation simulate(const SimulationInput& input, std::stop_token stop) {
  assert(input.loop.pipe > 0 && input.loop.heat_flow_rate > 0);
  assert(input.loop.ground.size() == kYearHours && input.house.heating.size() == kYearHours &&
         input.house.cooling.size() == kYearHours);
  Simulator simulator(input);
  Simulation out;
  for (int y = 0; y < input.years && !stop.stop_requested(); ++y) {
    YearSum year;
    std::vector<HourState>* keep = y == 0                 ? &out.first
                                   : y == 9               ? &out.tenth
                                   : y == input.years - 1 ? &out.last
                                                          : nullptr;
    if (keep) keep->reserve(kYearHours);
    for (int h = 0; h < kYearHours; ++h) {
      const HourState state = simulator.hour(h, year);
      if (keep) keep->push_back(state);
    }
    out.years.push_back(year);
  }
  if (input.years == 1) out.last = out.first;
  if (input.years == 10) out.last = out.tenth;
  out.coldest = 1e9;
  out.warmest = -1e9;
  for (const YearSum& y : out.years) {
    out.coldest = std::min(out.coldest, y.coldest);
    out.warmest = std::max(out.warmest, y.warmest);
  }
  return out;
}

}  // namespace underlawn
