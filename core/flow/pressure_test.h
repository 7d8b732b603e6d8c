// SPDX-License-Identifier: GPL-3.0-or-later
// What the gauge of a filled polyethylene loop shows while it is pumped up, held and shut in.
//
// The bore creeps, so pressure falls without any leak. With J(t) = 1/E(t) and superposition in time the loop
// takes up, per volume,
//   c/m(T) Int J(t-s) dP(s) + P/K + a (1 - Pa/(P+Pa)) + (bore's - liquid's thermal growth),
// and that is what was pumped in less what leaked. c is bore_compliance, m modulus_multiplier, K the liquid's
// bulk modulus, a the trapped air at atmospheric pressure Pa. Assumed: the whole strain follows m(T) at once
// (vertical shift), which overstates how a change of temperature acts on old strain; air does not dissolve.
#pragma once

#include <string>
#include <vector>

#include "flow/loop_volume.h"
#include "pipe/fluid.h"
#include "pipe/polyethylene.h"

namespace underlawn {

inline constexpr double kAtmosphere = 101325;  // Pa
// Every pressure below is a gauge pressure, Pa.

enum class PhaseKind {
  pump,    // pressure moves in a straight line to `pressure`; lower than before: water is let out
  hold,    // pressure stays, with make-up water
  shut_in  // valve closed: nothing goes in or out but a leak
};
struct TestPhase {
  PhaseKind kind = PhaseKind::pump;
  double duration = 0;  // s, > 0
  double pressure = 0;  // at the end of a pump phase, >= 0; not read otherwise
};
struct TestProgramme {
  std::string name;
  std::vector<TestPhase> phases;
};
// Refuses: no phase, a first phase that does not pump, a last one that does not shut in, durations not in
// 1 s to 30 days, pressures not in 0 to 10 MPa, more than 12 phases.
Result<void> check_programme(const TestProgramme& programme);
// When the last shut-in starts and ends, s from the start of pumping.
double shut_in_start(const TestProgramme& programme);
double programme_end(const TestProgramme& programme);
// Gauge pressure when the last shut-in starts, if no earlier phase shuts in.
double shut_in_pressure(const TestProgramme& programme);

struct TimedTemperature {
  double time = 0;         // s from the start of pumping
  double temperature = 0;  // deg C
};

// Value at t of a function known at rising times: straight between, level outside; 0 of nothing.
double interpolated(const std::vector<double>& time, const std::vector<double>& value, double t);

// deg C at a time; straight between, level outside. `series` in order and not empty.
class TemperatureSeries {
 public:
  explicit TemperatureSeries(const std::vector<TimedTemperature>& series);
  double at(double t) const;

 private:
  std::vector<double> time_, value_;
};

// What is known or supposed about the loop under test.
struct LoopState {
  PeCreep creep;
  Fluid fluid = Fluid::water;
  double mass_fraction = 0;
  PipeHold hold = PipeHold::held;
  std::vector<TimedTemperature> temperature = {{0, 15}};  // in order of time
  double air = 0;                                         // m3 per m3 of loop at atmospheric pressure, 0..0.2
  double leak = 0;           // m3/s at leak_pressure, >= 0; goes with the root of the pressure (orifice)
  double leak_pressure = 0;  // Pa, > 0 where there is a leak
};

struct TestCurve {
  std::vector<double> time;            // s from the start of pumping
  std::vector<double> pressure;        // Pa
  std::vector<double> added;           // m3 pumped in less let out since the start, leak not deducted
  double pressure_at(double t) const;  // straight between, level outside
  double added_at(double t) const;
};

// The programme's time steps with the weights of creep's memory, good for any loop of this exponent.
class PreparedTest {
 public:
  static Result<PreparedTest> make(TestProgramme programme, double exponent);

  const TestProgramme& programme() const { return programme_; }
  const std::vector<double>& times() const { return times_; }
  double exponent() const { return exponent_; }
  // The phase that ends with, or holds, step n >= 1.
  int phase_of(std::size_t n) const { return phase_[n]; }
  // Of the change of pressure over step k <= n: its share, in hours^exponent, in the strain at time n.
  double weight(std::size_t n, std::size_t k) const { return weights_[n * (n - 1) / 2 + k - 1]; }

 private:
  TestProgramme programme_;
  double exponent_ = 0;
  std::vector<double> times_;
  std::vector<int> phase_;
  std::vector<double> weights_;
};

// Product integration, piecewise linear in pressure; exact for the kernel's singular start. Refuses what
// check_loop refuses, states beyond the ranges above, a temperature beyond the material's tables, an exponent
// that is not the prepared one.
Result<TestCurve> test_curve(const PreparedTest& prepared, const LoopVolume& loop, const LoopState& state);
// The same in one go.
Result<TestCurve> test_curve(const TestProgramme& programme, const LoopVolume& loop, const LoopState& state);

// Pa/K at which pressure answers a small change of temperature, valve closed, `seconds` after pumping up to
// `pressure`: expansion of liquid and bore, and the softer modulus. Negative: warming lowers it.
Result<double> pressure_per_kelvin(const LoopVolume& loop, const LoopState& state, double pressure,
                                   double seconds);

}  // namespace underlawn
