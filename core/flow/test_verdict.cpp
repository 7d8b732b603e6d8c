// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/test_verdict.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "base/say.h"
#include "flow/leak_fit.h"
#include "flow/test_procedure.h"

namespace underlawn {
namespace {

using Readings = std::vector<PressureReading>;

struct Asked {
  const LoopVolume& loop;
  LoopState state;
  TestBounds bounds;
  Readings readings;  // from the shutting of the valve on
  UnitSystem units;
};

std::string print(Quantity q, double value, UnitSystem units) {
  return print_quantity(q, value, units);
}

Judgement undecided(Judgement so_far, std::string reason, std::string next) {
  so_far.verdict = Verdict::cannot_tell;
  so_far.reason = std::move(reason);
  so_far.next = std::move(next);
  return so_far;
}

// Too little to judge by: why, or nothing.
std::string too_little(const Readings& readings, double planned, UnitSystem units) {
  if (readings.size() == 1)
    return say("Only 1 reading since the valve was shut; at least {} are needed.",
               std::to_string(kLeastReadings));
  if (readings.size() < kLeastReadings)
    return say("Only {} readings since the valve was shut; at least {} are needed.",
               std::to_string(readings.size()), std::to_string(kLeastReadings));
  if (readings.front().time > 0.1 * planned)
    return say("The first reading is {} after the valve was shut; what happened before is not known.",
               print(Quantity::duration, readings.front().time, units));
  if (readings.back().time - readings.front().time < kLeastShare * planned)
    return say("The readings cover {} of the {} the test asks for.",
               print(Quantity::duration, readings.back().time - readings.front().time, units),
               print(Quantity::duration, planned, units));
  return "";
}

bool all_measured(const Readings& readings) {
  return std::all_of(readings.begin(), readings.end(), [](const auto& r) { return r.temperature; });
}

double temperature_move(const Readings& readings) {
  double low = 1e9, high = -1e9;
  for (const PressureReading& r : readings)
    if (r.temperature) low = std::min(low, *r.temperature), high = std::max(high, *r.temperature);
  return high < low ? 0 : high - low;
}

void take_in_temperatures(Asked& asked, double start) {
  if (!all_measured(asked.readings)) return;
  constexpr std::size_t kMostPoints = 200;
  asked.bounds.temperature_drift = std::min(asked.bounds.temperature_drift, kMeasuredDrift);
  asked.state.temperature.clear();
  const Readings& all = asked.readings;
  const std::size_t points = std::min(kMostPoints, all.size());
  for (std::size_t i = 0; i < points; ++i) {
    const PressureReading& r = all[i * (all.size() - 1) / (points - 1)];
    asked.state.temperature.push_back({start + r.time, *r.temperature});
  }
}

void scale_pressures(TestProgramme& programme, double factor) {
  for (TestPhase& p : programme.phases) p.pressure *= factor;
}

// m3 per m3: what the water pumped in exceeds what the loop takes without air.
Result<double> air_from(const BandTest& test, const Asked& asked, double pumped, double softer) {
  LoopState state = asked.state;
  state.air = 0;
  state.creep.modulus_one_hour *= 1 - softer;
  const auto curve = test_curve(test.nominal, asked.loop, state);
  if (!curve) return tl::unexpected(curve.error());
  const TestPhase& pump = test.nominal.programme().phases.front();
  const double share = pump.pressure / (pump.pressure + kAtmosphere);
  return (pumped - curve->added_at(pump.duration)) / (loop_volume(asked.loop) * std::max(share, 1e-9));
}

struct Count {
  std::size_t below = 0, above = 0, all = 0, earlier_out = 0;
};
Count against_band(const Judgement& j, const Readings& readings) {
  const double start = shut_in_start(j.programme), last = readings.back().time;
  Count count;
  for (const PressureReading& r : readings) {
    const bool below = r.pressure < j.band.low_at(start + r.time);
    const bool above = r.pressure > j.band.high_at(start + r.time);
    if (r.time < last * 2 / 3) {
      count.earlier_out += below || above;
      continue;
    }
    ++count.all;
    count.below += below;
    count.above += above;
  }
  return count;
}

Judgement conclude(Judgement j, const Asked& asked) {
  const Count count = against_band(j, asked.readings);
  const std::string visible = leak_text(j.smallest_visible, asked.units);
  if (2 * count.above > count.all)
    return undecided(
        std::move(j),
        say("The pressure stayed higher than a sound loop's can: the loop cooled, or water still went "
            "in, or the gauge sticks."),
        say("Check the make-up valve and the gauge, measure the pipe's temperature, and test again."));
  if (2 * count.below > count.all) {
    j.verdict = Verdict::leak_suspected;
    j.reason = say(
        "The pressure fell further than a sound loop's can: as with a leak of about {} (between {} and {}).",
        leak_text(j.leak, asked.units), leak_text(j.leak_least, asked.units),
        leak_text(j.leak_most, asked.units));
    j.next =
        say("Let the pressure off slowly; then look over test caps, valves and hose first, and every joint "
            "after. Rest the loop 8 hours without pressure before testing again.");
    return j;
  }
  j.verdict = Verdict::sound;
  j.reason = count.earlier_out > 0 ? say("The pressure went as a sound loop's goes. A leak below about {} "
                                         "would not have shown in this test. "
                                         "{} earlier readings lie outside the band.",
                                         visible, count.earlier_out)
                                   : say("The pressure went as a sound loop's goes. A leak below about {} "
                                         "would not have shown in this test.",
                                         visible);
  j.next =
      say("Keep the log with the loop's papers; keep the loop under some pressure while backfilling, so that "
          "damage shows.");
  return j;
}

// With the programme as it was run: air, band, leak, verdict.
Result<Judgement> judge_run(Judgement j, const Asked& asked, std::optional<double> pumped) {
  const auto test = prepare_band(j.programme, asked.state, asked.bounds);
  if (!test) return tl::unexpected(test.error());
  auto band = test_band(*test, asked.loop, asked.state, asked.bounds);
  if (!band) return tl::unexpected(band.error());
  j.band = std::move(*band);
  if (pumped) {
    const auto air = air_from(*test, asked, *pumped, 0);
    const auto least = air_from(*test, asked, *pumped, asked.bounds.modulus);
    if (!air || !least) return tl::unexpected((!air ? air : least).error());
    j.air = *air;
    if (*least > asked.bounds.most_air)
      return undecided(std::move(j),
                       say("It took {} of water to come to pressure, more than the pipe's own stretch: about "
                           "{} of air is in the loop, and hides a leak.",
                           print(Quantity::fluid_volume, *pumped, asked.units),
                           print(Quantity::fluid_volume, *air * loop_volume(asked.loop), asked.units)),
                       say("Let the pressure off slowly, purge again until no air comes, and test again."));
  }
  const auto visible = smallest_visible_leak(*test, j.band, asked.loop, asked.state);
  if (!visible && visible.error().code == "test_sees_nothing")
    return undecided(std::move(j), say("At this pressure no leak can be told from what a sound loop may do."),
                     visible.error().advice);
  if (!visible) return tl::unexpected(visible.error());
  j.smallest_visible = *visible;
  const auto fit = fit_leak(*test, asked.loop, asked.state, asked.bounds, asked.readings);
  if (!fit) return tl::unexpected(fit.error());
  j.leak = fit->leak, j.leak_least = fit->least, j.leak_most = fit->most;
  return conclude(std::move(j), asked);
}

}  // namespace

std::string leak_text(double leak, UnitSystem units) {
  const bool metric = units == UnitSystem::metric;
  const double value = leak * 3600 / (metric ? 1e-3 : 3.785411784e-3);
  const int places = value > 0 ? std::clamp(1 - int(std::floor(std::log10(value))), 0, 4) : 0;
  char text[64];
  const auto end = std::to_chars(text, text + sizeof text, value, std::chars_format::fixed, places).ptr;
  return std::string(text, end) + (metric ? " L/h" : " gal/h");
}

bool within_rebound_tolerance(const Readings& readings) {
  if (readings.empty()) return false;
  const double target = readings.front().pressure;
  return std::all_of(readings.begin(), readings.end(), [&](const PressureReading& r) {
    return std::abs(r.pressure - target) <= kReboundTolerance * target;
  });
}

Result<Judgement> judge_test(const TestProgramme& programme, const LoopVolume& loop, const LoopState& state,
                             const TestBounds& bounds, const Readings& readings, std::optional<double> pumped,
                             UnitSystem units) {
  if (auto ok = check_readings(readings); !ok) return tl::unexpected(ok.error());
  const auto prepared = prepare_band(programme, state, bounds);
  if (!prepared) return tl::unexpected(prepared.error());
  const auto planned = leak_curve(*prepared, loop, state, 0);
  if (!planned) return tl::unexpected(planned.error());
  Asked asked{loop, state, bounds, {}, units};
  for (const PressureReading& r : readings)
    if (r.time >= 0) asked.readings.push_back(r);
  Judgement j;
  j.programme = programme;
  if (auto why = too_little(asked.readings, programme.phases.back().duration, units); !why.empty())
    return undecided(j, why, say("Test again and read the gauge every few minutes until the test's end."));
  const double start = shut_in_start(programme), first = asked.readings.front().pressure;
  const double off = first / planned->pressure_at(start + asked.readings.front().time);
  if (!(std::abs(off - 1) <= kMostPressureOff))
    return undecided(
        j,
        say("The first reading is {}, not near the {} of the test.", print(Quantity::pressure, first, units),
            print(Quantity::pressure, shut_in_pressure(programme), units)),
        say("Enter the pressure the loop was tested at, or count the time from shutting the valve."));
  if (const double move = temperature_move(asked.readings); move > kMostTemperatureMove)
    return undecided(j,
                     say("The temperature moved by {} while the valve was shut; that moves the pressure more "
                         "than a leak does.",
                         print(Quantity::temperature_difference, move, units)),
                     say("Shade or cover the pipe and test again early or late in the day."));
  scale_pressures(j.programme, off);
  j.programme.phases.back().duration = asked.readings.back().time;
  take_in_temperatures(asked, start);
  return judge_run(std::move(j), asked, pumped);
}

}  // namespace underlawn
