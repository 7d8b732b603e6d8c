// SPDX-License-Identifier: GPL-3.0-or-later
// The phases of a pressure test, their time steps and the memory of creep on them.
#include <cmath>

#include "base/quantity.h"
#include "base/say.h"
#include "flow/pressure_test.h"

namespace underlawn {
namespace {

constexpr double kMostDuration = 30 * 86400.0, kMostPressure = 10e6;
constexpr std::size_t kMostPhases = 12;
constexpr int kPumpSteps = 12, kPhaseSteps = 40;

Result<void> check_phase(const TestPhase& p, std::size_t i) {
  if (!(p.duration >= 1 && p.duration <= kMostDuration))
    return refuse({"test_duration", say("duration of phase {} of the test", i + 1),
                   print_quantity(Quantity::duration, p.duration, UnitSystem::metric), say("1 s to 30 days"),
                   say("Enter how long the phase lasts, or leave it out.")});
  if (p.kind == PhaseKind::pump && !(p.pressure >= 0 && p.pressure <= kMostPressure))
    return refuse({"test_phase_pressure", say("pressure of phase {} of the test", i + 1),
                   print_quantity(Quantity::pressure, p.pressure, UnitSystem::metric), say("0 to 10 MPa"),
                   say("Enter the gauge pressure to be reached.")});
  return {};
}

// Steps crowd at a phase's start, where creep answers what just changed.
double step_fraction(PhaseKind kind, int i) {
  if (kind == PhaseKind::pump) return double(i) / kPumpSteps;
  const double x = double(i) / kPhaseSteps;
  return x * x * x;
}

// Integral of hours^n from 0 to t seconds, in seconds.
double memory_integral(double t, double n) {
  return t <= 0 ? 0 : t * std::pow(t / 3600, n) / (1 + n);
}

}  // namespace

Result<void> check_programme(const TestProgramme& programme) {
  const auto& phases = programme.phases;
  const auto trouble = [&](std::string value, std::string bound) {
    return refuse(
        {"test_phases", say("phases of the test"), value, bound, say("Choose one of the procedures.")});
  };
  if (phases.empty() || phases.size() > kMostPhases)
    return trouble(std::to_string(phases.size()), say("1 to {}", std::to_string(kMostPhases)));
  if (phases.front().kind != PhaseKind::pump)
    return trouble(say("one that does not pump first"), say("pump first"));
  if (phases.back().kind != PhaseKind::shut_in)
    return trouble(say("one whose last phase is not shut in"), say("shut in last"));
  for (std::size_t i = 0; i < phases.size(); ++i)
    if (auto ok = check_phase(phases[i], i); !ok) return ok;
  return {};
}

double programme_end(const TestProgramme& programme) {
  double end = 0;
  for (const TestPhase& p : programme.phases) end += p.duration;
  return end;
}

double shut_in_start(const TestProgramme& programme) {
  return programme_end(programme) - (programme.phases.empty() ? 0 : programme.phases.back().duration);
}

double shut_in_pressure(const TestProgramme& programme) {
  double pressure = 0;
  for (const TestPhase& p : programme.phases)
    if (p.kind == PhaseKind::pump) pressure = p.pressure;
  return pressure;
}

Result<PreparedTest> PreparedTest::make(TestProgramme programme, double exponent) {
  if (auto ok = check_programme(programme); !ok) return tl::unexpected(ok.error());
  if (!(exponent > 0 && exponent < 0.5))
    return refuse({"creep_exponent", say("creep exponent of the pipe"), std::to_string(exponent),
                   say("more than 0 and less than 0.5"), say("Polyethylene has about 0.075.")});
  PreparedTest test;
  test.exponent_ = exponent;
  test.times_ = {0};
  test.phase_ = {0};
  double start = 0;
  for (std::size_t p = 0; p < programme.phases.size(); ++p) {
    const TestPhase& phase = programme.phases[p];
    const int steps = phase.kind == PhaseKind::pump ? kPumpSteps : kPhaseSteps;
    for (int i = 1; i <= steps; ++i) {
      test.times_.push_back(start + phase.duration * step_fraction(phase.kind, i));
      test.phase_.push_back(int(p));
    }
    start += phase.duration;
  }
  const auto& t = test.times_;
  for (std::size_t n = 1; n < t.size(); ++n) {
    double before = memory_integral(t[n], exponent);
    for (std::size_t k = 1; k <= n; ++k) {
      const double after = memory_integral(t[n] - t[k], exponent);
      test.weights_.push_back((before - after) / (t[k] - t[k - 1]));
      before = after;
    }
  }
  test.programme_ = std::move(programme);
  return test;
}

}  // namespace underlawn
