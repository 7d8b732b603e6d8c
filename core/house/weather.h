// SPDX-License-Identifier: GPL-3.0-or-later
// A year of outdoor air, hour by hour.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "base/result.h"

namespace underlawn {

inline constexpr int kWeatherHours = 8760;  // a common year, hour 0 is midnight to one on 1 January

struct WeatherYear {
  std::string name;
  std::vector<double> outdoor;  // deg C, kWeatherHours values
  bool operator==(const WeatherYear&) const = default;
};

// Twelve monthly means and the mean daily range (warmest less coldest of a day).
struct MonthlyNormals {
  std::string name;
  std::array<double, 12> mean{};         // deg C
  std::array<double, 12> daily_range{};  // K, >= 0
  bool operator==(const MonthlyNormals&) const = default;
};

// Refuses a mean or a daily range that no place has, by month.
Result<void> check_normals(const MonthlyNormals& normals);

// A year whose twelve monthly means are the normals: days on a smooth curve through the months, hours on a
// cosine warmest at 15:00, and spells of weather (a fixed pattern, the same every time) so that cold snaps
// are there. Spells go `spell_deviation` K either way and at times half as far again, on the coldest days
// twice as far as on the warmest. The pattern is an assumption of our own and is said so in the calculation
// report; the factor of two gives the cold design day of Amsterdam.
Result<WeatherYear> year_from_normals(const MonthlyNormals& normals, double spell_deviation = 4.0);

// Climates to start from where no file and no normals are at hand, from coldest to hottest year. Typical
// numbers of our own, no station's, and their names say so.
const std::vector<MonthlyNormals>& normals_presets();

// Mean over the year, half the swing of the yearly cosine fitted by least squares, and its coldest day of the
// year: the surface climate where nothing better is known.
struct YearlyWave {
  double mean = 0;         // deg C
  double amplitude = 0;    // K
  double coldest_day = 0;  // 0..365
};
YearlyWave yearly_wave(const WeatherYear& year);

// Heating and cooling degree-days (K day) below and above a base, from hourly values.
double heating_degree_days(const WeatherYear& year, double base);
double cooling_degree_days(const WeatherYear& year, double base);

// Outdoor temperatures of the design days, as ASHRAE Fundamentals counts them: colder in 0.4 % of the year's
// hours (its 99.6 % dry bulb), and warmer in 0.4 %.
struct DesignDays {
  double cold = 0;  // deg C
  double warm = 0;
};
DesignDays design_days(const WeatherYear& year);

}  // namespace underlawn
