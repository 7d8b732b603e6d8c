// SPDX-License-Identifier: GPL-3.0-or-later
// What the readings of a pressure test say of the loop.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/quantity.h"
#include "flow/test_band.h"
#include "flow/test_readings.h"

namespace underlawn {

enum class Verdict { sound, leak_suspected, cannot_tell };

struct Judgement {
  Verdict verdict = Verdict::cannot_tell;
  std::string reason;  // plain sentences
  std::string next;    // what to do
  // m3/s at the pressure shut in at: by least squares against the nominal loop, and between what every corner
  // of the bounds and twice the readings' scatter allow. 0 where not fitted.
  double leak = 0, leak_least = 0, leak_most = 0;
  double smallest_visible = 0;  // m3/s; 0 where not worked out
  std::optional<double> air;    // m3 per m3 of loop, from the water pumped; may come out below 0
  TestProgramme programme;      // as judged: pressures as the first reading says, shut in to the last reading
  TestBand band;                // of that programme, the temperatures measured taken in
};

inline constexpr std::size_t kLeastReadings = 5;
inline constexpr double kLeastShare = 0.5;         // of the shut-in that the readings must cover
inline constexpr double kMostTemperatureMove = 2;  // K measured, beyond which the test is not judged
inline constexpr double kMostPressureOff = 0.1;    // of the planned pressure

// `pumped`: m3 of water from full, at no pressure, to the first pump phase's end, where the crew measured it.
// Sound: the last third of the readings lies in the band. Leak suspected: most of it lies below. Cannot tell:
// too few or too short, not at the planned pressure, temperature moved, pressure above the band, more air
// than the bounds allow even were the pipe as soft as they allow. Texts in `units`. Refusals of
// check_readings and test_band.
Result<Judgement> judge_test(const TestProgramme& programme, const LoopVolume& loop, const LoopState& state,
                             const TestBounds& bounds, const std::vector<PressureReading>& readings,
                             std::optional<double> pumped, UnitSystem units);

// ASTM F2164's own rule (from memory): after the drop no reading is further than 5 % from the first.
bool within_rebound_tolerance(const std::vector<PressureReading>& readings);

// "0.26 L/h" or "0.07 gal/h", two figures.
std::string leak_text(double leak, UnitSystem units);

}  // namespace underlawn
