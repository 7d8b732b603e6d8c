// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/pressure_test.h"

#include <algorithm>
#include <boost/math/tools/roots.hpp>
#include <cmath>

#include "base/quantity.h"
#include "base/say.h"
#include "pipe/liquid_volume.h"

namespace underlawn {
namespace {

Result<void> check_state(const LoopState& s) {
  if (auto ok = check_creep(s.creep); !ok) return ok;
  const auto trouble = [](const std::string& code, const std::string& thing, double value,
                          const std::string& bound, const std::string& advice) {
    return refuse({code, thing, std::to_string(value), bound, advice});
  };
  if (!(s.air >= 0 && s.air <= 0.2))
    return trouble("test_air", say("air per volume of the loop"), s.air, say("0 to 0.2"),
                   say("Purge the loop first."));
  if (!(s.leak >= 0 && s.leak < 1e9))
    return trouble("test_leak", say("leak, m3/s"), s.leak, say("0 or more"), say("Enter a leak."));
  if (s.leak > 0 && !(s.leak_pressure > 0))
    return trouble("test_leak_pressure", say("pressure of the leak, Pa"), s.leak_pressure, say("more than 0"),
                   say("Say at which pressure the loop leaks so much."));
  for (std::size_t i = 0; i < s.temperature.size(); ++i)
    if (!std::isfinite(s.temperature[i].time) ||
        (i > 0 && !(s.temperature[i].time > s.temperature[i - 1].time)))
      return trouble("test_temperature_order", say("time of a temperature, s"), s.temperature[i].time,
                     say("later than the one before"), say("Put the temperatures in order of time."));
  if (s.temperature.empty())
    return trouble("test_temperature_none", say("number of temperatures"), 0, say("at least 1"),
                   say("Say how warm the loop is."));
  return {};
}

// The loop's thermal part at each step.
struct Thermal {
  std::vector<double> softness;  // 1/m(T)
  std::vector<double> growth;    // bore's less liquid's since the start
};

Result<Thermal> thermal_steps(const std::vector<double>& times, const LoopState& s) {
  Thermal steps;
  const TemperatureSeries temperature(s.temperature);
  const double start = temperature.at(times.front());
  for (double t : times) {
    const double now = temperature.at(t);
    const auto multiplier = modulus_multiplier(now);
    if (!multiplier) return tl::unexpected(multiplier.error());
    const auto liquid = liquid_growth(s.fluid, s.mass_fraction, start, now);
    if (!liquid) return tl::unexpected(liquid.error());
    steps.softness.push_back(1 / *multiplier);
    steps.growth.push_back(bore_expansion(s.hold, s.creep.poisson) * (now - start) - *liquid);
  }
  return steps;
}

double air_given(double air, double pressure) {
  return air * (1 - kAtmosphere / (std::max(pressure, -0.99 * kAtmosphere) + kAtmosphere));
}

// Marches through the steps; volumes are per volume of the loop.
class March {
 public:
  March(const PreparedTest& test, const LoopState& state, double compliance, double volume, Thermal thermal)
      : test_(test), state_(state), volume_(volume), thermal_(std::move(thermal)) {
    softness_ = compliance / state.creep.modulus_one_hour;
  }

  TestCurve run() {
    curve_.time = {0};
    curve_.pressure = {0};
    curve_.added = {0};
    for (std::size_t n = 1; n < test_.times().size(); ++n) step(n);
    return std::move(curve_);
  }

 private:
  double leaks(double pressure) const {
    if (state_.leak <= 0 || pressure <= 0) return 0;
    return state_.leak / volume_ * std::sqrt(pressure / state_.leak_pressure);
  }

  // What the loop takes up at step n with pressure p there; `past` is the strain by earlier steps.
  double taken(std::size_t n, double p, double past) const {
    const double strain = past + test_.weight(n, n) * (p - curve_.pressure[n - 1]);
    return softness_ * thermal_.softness[n] * strain + p / kLiquidBulkModulus + air_given(state_.air, p) +
           thermal_.growth[n];
  }

  double lost(std::size_t n, double p) const {
    const double step = test_.times()[n] - test_.times()[n - 1];
    return lost_ + step * (leaks(curve_.pressure[n - 1]) + leaks(p)) / 2;
  }

  double driven(std::size_t n, const TestPhase& phase) const {
    if (phase.kind == PhaseKind::hold) return curve_.pressure[n - 1];
    return phase_from_ + (phase.pressure - phase_from_) * (test_.times()[n] - phase_start_) / phase.duration;
  }

  // The pressure at which the loop takes up just what is left in it; 0 where all pressure is gone.
  double shut(std::size_t n, double past) const {
    const auto excess = [&](double p) { return taken(n, p, past) + lost(n, p) - added_; };
    if (excess(0) >= 0) return 0;
    double high = std::max(1e3, 1.01 * curve_.pressure[n - 1]);
    while (excess(high) < 0) high *= 2;
    std::uintmax_t most = 60;
    const auto root = boost::math::tools::toms748_solve(excess, 0.0, high,
                                                        boost::math::tools::eps_tolerance<double>(44), most);
    return (root.first + root.second) / 2;
  }

  void step(std::size_t n) {
    const TestPhase& phase = test_.programme().phases[test_.phase_of(n)];
    if (n == 1 || test_.phase_of(n) != test_.phase_of(n - 1)) {
      phase_start_ = test_.times()[n - 1];
      phase_from_ = curve_.pressure[n - 1];
    }
    double past = 0;
    for (std::size_t k = 1; k < n; ++k)
      past += test_.weight(n, k) * (curve_.pressure[k] - curve_.pressure[k - 1]);
    const bool closed = phase.kind == PhaseKind::shut_in;
    const double p = closed ? shut(n, past) : driven(n, phase);
    lost_ = lost(n, p);
    if (!closed) added_ = taken(n, p, past) + lost_;
    curve_.time.push_back(test_.times()[n]);
    curve_.pressure.push_back(p);
    curve_.added.push_back(added_ * volume_);
  }

  const PreparedTest& test_;
  const LoopState& state_;
  double volume_, softness_ = 0;
  Thermal thermal_;
  TestCurve curve_;
  double phase_start_ = 0, phase_from_ = 0, added_ = 0, lost_ = 0;
};

}  // namespace

double interpolated(const std::vector<double>& time, const std::vector<double>& value, double t) {
  if (time.empty()) return 0;
  const auto after = std::upper_bound(time.begin(), time.end(), t) - time.begin();
  if (after == 0) return value.front();
  if (after == std::ptrdiff_t(time.size())) return value.back();
  const double f = (t - time[after - 1]) / (time[after] - time[after - 1]);
  return value[after - 1] + f * (value[after] - value[after - 1]);
}

TemperatureSeries::TemperatureSeries(const std::vector<TimedTemperature>& series) {
  for (const TimedTemperature& s : series) time_.push_back(s.time), value_.push_back(s.temperature);
}
double TemperatureSeries::at(double t) const {
  return interpolated(time_, value_, t);
}

double TestCurve::pressure_at(double t) const {
  return interpolated(time, pressure, t);
}
double TestCurve::added_at(double t) const {
  return interpolated(time, added, t);
}

Result<TestCurve> test_curve(const PreparedTest& prepared, const LoopVolume& loop, const LoopState& state) {
  if (auto ok = check_loop(loop); !ok) return tl::unexpected(ok.error());
  if (auto ok = check_state(state); !ok) return tl::unexpected(ok.error());
  if (prepared.exponent() != state.creep.exponent)
    return refuse({"test_exponent", say("creep exponent of the loop"), std::to_string(state.creep.exponent),
                   say("the {} the steps were prepared for", std::to_string(prepared.exponent())),
                   say("Prepare the test anew.")});
  auto thermal = thermal_steps(prepared.times(), state);
  if (!thermal) return tl::unexpected(thermal.error());
  return March(prepared, state, loop_compliance(loop, state.creep.poisson), loop_volume(loop),
               std::move(*thermal))
      .run();
}

Result<TestCurve> test_curve(const TestProgramme& programme, const LoopVolume& loop, const LoopState& state) {
  const auto prepared = PreparedTest::make(programme, state.creep.exponent);
  if (!prepared) return tl::unexpected(prepared.error());
  return test_curve(*prepared, loop, state);
}

Result<double> pressure_per_kelvin(const LoopVolume& loop, const LoopState& state, double pressure,
                                   double seconds) {
  if (auto ok = check_loop(loop); !ok) return tl::unexpected(ok.error());
  if (auto ok = check_state(state); !ok) return tl::unexpected(ok.error());
  const double t = state.temperature.front().temperature, h = 0.05;
  const auto low = modulus_multiplier(t - h), high = modulus_multiplier(t + h), at = modulus_multiplier(t);
  const auto liquid = liquid_growth(state.fluid, state.mass_fraction, t - h, t + h);
  if (!low || !high || !at) return tl::unexpected((!low ? low : !high ? high : at).error());
  if (!liquid) return liquid;
  const double c = loop_compliance(loop, state.creep.poisson) / creep_modulus(state.creep, seconds);
  const double softer = pressure * c * (1 / *high - 1 / *low) / (2 * h);
  const double growth = bore_expansion(state.hold, state.creep.poisson) - *liquid / (2 * h);
  const double air = state.air * kAtmosphere / std::pow(pressure + kAtmosphere, 2);
  return -(growth + softer) / (c / *at + 1 / kLiquidBulkModulus + air);
}

}  // namespace underlawn
