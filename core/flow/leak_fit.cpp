// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/leak_fit.h"

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <cmath>

namespace underlawn {
namespace {

constexpr std::size_t kMostFitted = 200;
constexpr int kScan = 12;

// Enough of them, evenly.
std::vector<PressureReading> thinned(const std::vector<PressureReading>& readings) {
  if (readings.size() <= kMostFitted) return readings;
  std::vector<PressureReading> out;
  for (std::size_t i = 0; i < kMostFitted; ++i)
    out.push_back(readings[i * (readings.size() - 1) / (kMostFitted - 1)]);
  return out;
}

// The loop and the log, as a function of the leak.
struct Problem {
  const PreparedTest& test;
  const LoopVolume& loop;
  LoopState state;
  const std::vector<PressureReading>& readings;

  TestCurve curve(double leak) {
    state.leak = leak;
    return test_curve(test, loop, state).value();
  }
  double squares(double leak) {
    const TestCurve c = curve(leak);
    const double start = shut_in_start(test.programme());
    double sum = 0;
    for (const PressureReading& r : readings) sum += std::pow(r.pressure - c.pressure_at(start + r.time), 2);
    return sum;
  }
};

// Widest leak looked for: it would empty the loop of all that was pumped in within a fiftieth of the shut-in.
double most_leak(const TestCurve& sound, double span) {
  return 50 * std::max(sound.added.back(), 1e-9) / span;
}

double best_leak(Problem& problem, double most) {
  const auto leak_at = [&](int i) { return i == 0 ? 0.0 : most * std::pow(10, -5.0 * (kScan - i) / kScan); };
  int best = 0;
  double least = problem.squares(0);
  for (int i = 1; i <= kScan; ++i)
    if (const double s = problem.squares(leak_at(i)); s < least) least = s, best = i;
  const double low = leak_at(std::max(0, best - 1)), high = leak_at(std::min(kScan, best + 1));
  std::uintmax_t steps = 40;  // over the share of the way, for the search's tolerance is absolute
  const double share =
      boost::math::tools::brent_find_minima([&](double u) { return problem.squares(low + u * (high - low)); },
                                            0.0, 1.0, 16, steps)
          .first;
  return low + share * (high - low);
}

// Twice the standard error of the leak: the readings' scatter (no less than the gauge's) over its slope.
double uncertainty(Problem& problem, double leak, double most, double gauge) {
  const double step = std::max(leak * 0.05, most * 1e-5), start = shut_in_start(problem.test.programme());
  const TestCurve a = problem.curve(leak), b = problem.curve(leak + step);
  double slopes = 0;
  for (const PressureReading& r : problem.readings)
    slopes += std::pow((b.pressure_at(start + r.time) - a.pressure_at(start + r.time)) / step, 2);
  const double scatter = std::sqrt(problem.squares(leak) / double(problem.readings.size()));
  return slopes > 0 ? 2 * std::max(scatter, gauge / std::sqrt(3.0)) / std::sqrt(slopes) : 0;
}

}  // namespace

Result<LeakFit> fit_leak(const BandTest& test, const LoopVolume& loop, const LoopState& state,
                         const TestBounds& bounds, const std::vector<PressureReading>& readings) {
  const auto sound = leak_curve(test, loop, state, 0);
  if (!sound) return tl::unexpected(sound.error());
  const TestProgramme& programme = test.nominal.programme();
  const double most = most_leak(*sound, programme.phases.back().duration);
  const double pressure = std::max(1.0, shut_in_pressure(programme));
  const auto few = thinned(readings);
  LoopState nominal = state;
  nominal.leak_pressure = pressure;
  Problem problem{test.nominal, loop, nominal, few};
  LeakFit fit;
  fit.leak = fit.least = fit.most = best_leak(problem, most);
  const double error = uncertainty(problem, fit.leak, most, bounds.gauge);
  for (const Corner& corner : band_corners(programme, state, bounds)) {
    LoopState s = corner.state;
    s.leak_pressure = pressure;
    Problem other{test.of(corner.exponent), loop, s, few};
    if (const auto ok = test_curve(other.test, loop, s); !ok) return tl::unexpected(ok.error());
    const double leak = best_leak(other, most);
    fit.least = std::min(fit.least, leak);
    fit.most = std::max(fit.most, leak);
  }
  fit.least = std::max(0.0, fit.least - error);
  fit.most += error;
  return fit;
}

}  // namespace underlawn
