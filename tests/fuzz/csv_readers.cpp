// SPDX-License-Identifier: GPL-3.0-or-later
// The other tables that are read: loads, heat pumps, needle-probe logs, pressure readings, weather. The first
// byte says which. None may crash, hang or give a number that is not finite.
#include <cmath>
#include <cstdint>
#include <cstdlib>

#include "flow/test_readings.h"
#include "ground/probe.h"
#include "house/heat_pump_file.h"
#include "house/load_file.h"
#include "house/weather_file.h"

using namespace underlawn;

namespace {

void must_be_finite(double value) {
  if (!std::isfinite(value)) std::abort();
}

void must_be_finite(const std::vector<double>& values) {
  for (double v : values) must_be_finite(v);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size < 1) return 0;
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  switch (data[0] % 5) {
    case 0:
      if (const auto loads = loads_from_csv(text, "fuzz")) {
        must_be_finite(loads->value.heating);
        must_be_finite(loads->value.cooling);
      }
      break;
    case 1:
      if (const auto unit = heat_pump_from_csv(text))
        for (const PerformancePoint& p : unit->heating) must_be_finite(p.entering);
      break;
    case 2:
      if (const auto log = probe_log_from_csv(text))
        for (const ProbeReading& r : log->readings) must_be_finite(r.temperature);
      break;
    case 3:
      if (const auto readings = readings_from_text(text))
        for (const PressureReading& r : *readings) must_be_finite(r.pressure);
      break;
    default:
      if (const auto weather = weather_from_epw(text)) must_be_finite(weather->value.outdoor);
  }
  return 0;
}
