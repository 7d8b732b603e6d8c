// SPDX-License-Identifier: GPL-3.0-or-later
// Conductivity of the ground from the log of a thermal needle probe.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace underlawn {

struct ProbeReading {
  double time = 0;         // s since the heater was switched on
  double temperature = 0;  // deg C
  bool operator==(const ProbeReading&) const = default;
};

struct ProbeLog {
  double power = 0;                    // W per metre of needle, constant while it heats
  std::vector<ProbeReading> readings;  // times rising; those up to 0 s come before the heater
  bool operator==(const ProbeLog&) const = default;
};

// Reads a table with columns time_s or time_min and temperature_c or temperature_f, under a line
// "power_w_m = 5.2" ("#" before it or not). Other columns are left out. Without such a line the power is 0,
// to be typed. Refuses, with the line: a missing column, no number, times that do not rise, a temperature
// below -60 or above 150 deg C.
Result<ProbeLog> probe_log_from_csv(std::string_view text);

struct ProbeWindow {
  double from = 0;  // s, above 0
  double to = 0;    // s
  bool operator==(const ProbeWindow&) const = default;
};

// Line source of constant power in the limit of late times (ASTM D5334): T = a + s ln t, k = q/(4 pi s), with
// s by least squares over the readings in the window.
struct ProbeFit {
  ProbeWindow window;
  bool window_found = false;  // by us, not typed
  int readings = 0;           // in the window
  double slope = 0;           // s, K per unit of ln t
  double slope_error = 0;     // K, standard error of s
  double conductivity = 0;    // k, W/(m K)
  double low = 0, high = 0;   // W/(m K), 95 %: k of s plus and minus Student's t times its error. Readings
                              // that drift together make this too narrow: see the spread
  double r2 = 0;              // of T over ln t
  double part_low = 0,
         part_high = 0;  // W/(m K), k over the first, middle and last half of the window in ln t
  double spread = 0;     // (part_high - part_low)/k
  bool operator==(const ProbeFit&) const = default;
};

// The largest spread at which the slope counts as steady. Manohar and others 2000 saw 2.5 % between windows;
// twice that is a choice of our own.
inline constexpr double kSteadySpread = 0.05;
// A window found by us spans at least this ratio of times (a choice of our own).
inline constexpr double kShortestRatio = 3;

// Without a window: of all that end with the log, the longest whose spread is at most `steady`. A log that
// goes on after the heater was switched off needs a window.
// Refuses: a power not above 0 or above 1000 W/m, times that do not rise, a window without order or with
// fewer than ten readings, or with fewer than three in one of its halves; readings that do not rise, or so
// scattered that level ground cannot be told from them; no steady window.
Result<ProbeFit> fit_probe(const ProbeLog& log, std::optional<ProbeWindow> window = {},
                           double steady = kSteadySpread);

}  // namespace underlawn
