// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/test_band.h"

#include <algorithm>
#include <boost/math/tools/roots.hpp>

#include "base/say.h"

namespace underlawn {
namespace {

Result<void> check_bounds(const TestBounds& b) {
  const auto within = [](double v, double most) { return v >= 0 && v <= most; };
  if (within(b.modulus, 0.5) && within(b.exponent, 0.5) && within(b.temperature_drift, 10) &&
      within(b.most_air, 0.2) && within(b.gauge, 100e3))
    return {};
  return refuse({"test_bounds", say("bounds of the sound loop"),
                 say("modulus {}, exponent {}, drift {} K, air {}, gauge {} Pa", std::to_string(b.modulus),
                     std::to_string(b.exponent), std::to_string(b.temperature_drift),
                     std::to_string(b.most_air), std::to_string(b.gauge)),
                 say("modulus and exponent 0 to 0.5, drift 0 to 10 K, air 0 to 0.2, gauge 0 to 100 kPa"),
                 say("Narrow the bounds.")});
}

// Adds a drift that starts with the last shut-in and has grown to `kelvin` at its end.
std::vector<TimedTemperature> drifted(const std::vector<TimedTemperature>& measured,
                                      const TestProgramme& programme, double kelvin) {
  const double start = shut_in_start(programme), end = programme_end(programme);
  std::vector<double> times = {0, start, end};
  for (const TimedTemperature& m : measured) times.push_back(m.time);
  std::sort(times.begin(), times.end());
  times.erase(std::unique(times.begin(), times.end()), times.end());
  const TemperatureSeries series(measured);
  std::vector<TimedTemperature> out;
  out.reserve(times.size());
  for (double t : times)
    out.push_back({t, series.at(t) + kelvin * std::clamp((t - start) / (end - start), 0.0, 1.0)});
  return out;
}

// How far below the band the leak's curve comes, Pa; negative while it stays within.
double comes_out(const TestCurve& leak, const TestBand& band, double start) {
  double most = -1e300;
  for (std::size_t i = 0; i < leak.time.size(); ++i)
    if (leak.time[i] > start) most = std::max(most, band.low[i] - leak.pressure[i]);
  return most;
}

}  // namespace

Result<BandTest> prepare_band(const TestProgramme& programme, const LoopState& state,
                              const TestBounds& bounds) {
  if (auto ok = check_bounds(bounds); !ok) return tl::unexpected(ok.error());
  auto nominal = PreparedTest::make(programme, state.creep.exponent);
  if (!nominal) return tl::unexpected(nominal.error());
  auto slow = PreparedTest::make(programme, state.creep.exponent * (1 - bounds.exponent));
  if (!slow) return tl::unexpected(slow.error());
  auto fast = PreparedTest::make(programme, state.creep.exponent * (1 + bounds.exponent));
  if (!fast) return tl::unexpected(fast.error());
  return BandTest{std::move(*nominal), std::move(*slow), std::move(*fast)};
}

std::vector<Corner> band_corners(const TestProgramme& programme, const LoopState& state,
                                 const TestBounds& bounds) {
  std::vector<Corner> corners;
  for (int exponent : {-1, 1})
    for (int modulus : {-1, 1})
      for (int drift : {-1, 1})
        for (double air : {0.0, bounds.most_air}) {
          Corner c{exponent, state};
          c.state.creep.exponent *= 1 + exponent * bounds.exponent;
          c.state.creep.modulus_one_hour *= 1 + modulus * bounds.modulus;
          c.state.temperature = drifted(state.temperature, programme, drift * bounds.temperature_drift);
          c.state.air = air;
          c.state.leak = 0;
          corners.push_back(std::move(c));
        }
  return corners;
}

std::string band_words(const TestBounds& b, UnitSystem units) {
  return say(
      "The band allows for {} of warming or cooling since the valve was shut, which moves it most: a "
      "loop that cools may rise. Then for {} of the gauge, a pipe {} softer or stiffer, and a little air. "
      "The leak drawn is the smallest that leaves the band by the test's end, so it ends on its lower "
      "edge; in a loop that cools a larger one can hide. The band is reckoned from the pipe's creep and "
      "from how pipe and water grow with warmth; it is not the rule of ASTM F2164 (from memory): within 5 % "
      "of the pressure for an hour, after 4 hours' hold and 10 psi let out.",
      print_quantity(Quantity::temperature_difference, b.temperature_drift, units),
      print_quantity(Quantity::pressure, b.gauge, units), print_quantity(Quantity::ratio, b.modulus, units));
}

double TestBand::low_at(double t) const {
  return interpolated(expected.time, low, t);
}
double TestBand::high_at(double t) const {
  return interpolated(expected.time, high, t);
}

Result<TestBand> test_band(const BandTest& test, const LoopVolume& loop, const LoopState& state,
                           const TestBounds& bounds) {
  auto expected = leak_curve(test, loop, state, 0);
  if (!expected) return tl::unexpected(expected.error());
  TestBand band{std::move(*expected), {}, {}};
  band.low = band.high = band.expected.pressure;
  const TestProgramme& programme = test.nominal.programme();
  for (const Corner& corner : band_corners(programme, state, bounds)) {
    const auto curve = test_curve(test.of(corner.exponent), loop, corner.state);
    if (!curve) return tl::unexpected(curve.error());
    for (std::size_t i = 0; i < band.low.size(); ++i) {
      band.low[i] = std::min(band.low[i], curve->pressure[i]);
      band.high[i] = std::max(band.high[i], curve->pressure[i]);
    }
  }
  const double start = shut_in_start(programme);
  for (std::size_t i = 0; i < band.low.size(); ++i) {
    if (band.expected.time[i] < start) continue;
    band.low[i] -= bounds.gauge;
    band.high[i] += bounds.gauge;
  }
  return band;
}

Result<TestCurve> leak_curve(const BandTest& test, const LoopVolume& loop, const LoopState& state,
                             double leak) {
  LoopState leaking = state;
  leaking.leak = leak;
  leaking.leak_pressure = std::max(1.0, shut_in_pressure(test.nominal.programme()));
  return test_curve(test.nominal, loop, leaking);
}

Result<double> smallest_visible_leak(const BandTest& test, const LoopVolume& loop, const LoopState& state,
                                     const TestBounds& bounds) {
  const auto band = test_band(test, loop, state, bounds);
  if (!band) return tl::unexpected(band.error());
  return smallest_visible_leak(test, *band, loop, state);
}

Result<double> smallest_visible_leak(const BandTest& test, const TestBand& band, const LoopVolume& loop,
                                     const LoopState& state) {
  const double start = shut_in_start(test.nominal.programme());
  const auto excess = [&](double leak) {
    return comes_out(leak_curve(test, loop, state, leak).value(), band, start);
  };
  const double end = programme_end(test.nominal.programme());
  double high = 1e-4 * loop_volume(loop) / (end - start);
  while (excess(high) < 0 && high < 1e-1 * loop_volume(loop)) high *= 4;
  if (excess(high) < 0)
    return refuse({"test_sees_nothing", say("band of the sound loop"), say("down to no pressure"),
                   say("narrow enough for a leak to leave it"),
                   say("Test at a higher pressure or hold longer.")});
  std::uintmax_t most = 40;
  return boost::math::tools::toms748_solve(excess, 0.0, high, boost::math::tools::eps_tolerance<double>(20),
                                           most)
      .second;
}

}  // namespace underlawn
