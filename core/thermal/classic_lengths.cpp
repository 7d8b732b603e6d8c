// SPDX-License-Identifier: GPL-3.0-or-later
#include "thermal/classic_lengths.h"

#include <algorithm>
#include <array>

namespace underlawn {
namespace {

constexpr std::array<int, 13> kMonthStarts = {0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365};

struct Month {
  int month = 0;
  double mean = 0;  // W
};

Month heaviest(const std::vector<double>& load) {
  Month out;
  if (load.size() != static_cast<std::size_t>(kYearHours)) return out;
  for (int m = 0; m < 12; ++m) {
    double sum = 0;
    for (int h = 24 * kMonthStarts[m]; h < 24 * kMonthStarts[m + 1]; ++h) sum += load[h];
    const double mean = sum / (24.0 * (kMonthStarts[m + 1] - kMonthStarts[m]));
    if (mean > out.mean) out = {m, mean};
  }
  return out;
}

ClassicCase case_of(const Temperatures& laid, const std::vector<PerformancePoint>& table, const Month& month,
                    double limit, double ground) {
  const Performance p = performance_at(table, limit);
  return {p.capacity,
          p.capacity / p.power,
          laid.circulation.fluid_resistance,
          laid.response_month,
          std::min(1.0, month.mean / p.capacity),
          ground,
          limit,
          month.month};
}

}  // namespace

double classic_heating_length(const ClassicCase& c) {
  return c.capacity * (c.cop - 1) / c.cop * (c.pipe_resistance + c.soil_resistance * c.run_fraction) /
         (c.ground - c.limit);
}

double classic_cooling_length(const ClassicCase& c) {
  return c.capacity * (c.cop + 1) / c.cop * (c.pipe_resistance + c.soil_resistance * c.run_fraction) /
         (c.limit - c.ground);
}

ClassicLengths classic_lengths(const Temperatures& laid, const Surroundings& s, const ThermalWishes& w) {
  ClassicLengths out;
  if (!s.ground_hours.empty() || laid.ground.empty()) return out;
  const auto [coldest, warmest] = std::minmax_element(laid.ground.begin(), laid.ground.end());
  const Month cold = heaviest(s.house.heating), warm = heaviest(s.house.cooling);
  if (cold.mean > 0 && *coldest > w.coldest_allowed) {
    out.heating = case_of(laid, w.unit.heating, cold, w.coldest_allowed, *coldest);
    out.heating_length = classic_heating_length(*out.heating);
  }
  if (warm.mean > 0 && *warmest < w.warmest_allowed) {
    out.cooling = case_of(laid, w.unit.cooling, warm, w.warmest_allowed, *warmest);
    out.cooling_length = classic_cooling_length(*out.cooling);
  }
  return out;
}

}  // namespace underlawn
