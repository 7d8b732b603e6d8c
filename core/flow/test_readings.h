// SPDX-License-Identifier: GPL-3.0-or-later
// What the crew wrote down, or the logger did, while the loop was shut in.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace underlawn {

struct PressureReading {
  double time = 0;                    // s since the valve was shut; less than 0 before that
  double pressure = 0;                // Pa gauge
  std::optional<double> temperature;  // deg C of the pipe or the water in it
  bool operator==(const PressureReading&) const = default;
};

inline constexpr std::size_t kMostReadings = 20000;

// Refuses, naming the reading by its row: not a number, beyond -1 to 100 bar, -30 to 60 C or 30 days, times
// that do not rise; no readings, more than kMostReadings.
Result<void> check_readings(const std::vector<PressureReading>& readings);

// A table with column names on top: time_s, time_min or time_h; pressure_psi, pressure_kpa or pressure_bar;
// if measured temperature_c or temperature_f, where a cell may be empty. Refuses, naming line and row, what
// check_readings refuses and a cell that is no number; a column missing or there in two units.
Result<std::vector<PressureReading>> readings_from_text(std::string_view text);

}  // namespace underlawn
