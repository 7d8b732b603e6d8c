// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/weather.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/quantity.h"
#include "base/say.h"
#include "house/calendar.h"

namespace underlawn {
namespace {

using std::numbers::pi;

// Spells of the coldest day over those of the warmest.
constexpr double kWinterSpell = 2;

// Straight lines between mid-months.
double between_months(const std::array<double, 12>& at_mid, double day) {
  std::array<double, 12> mid{};
  double start = 0;
  for (int m = 0; m < 12; ++m) {
    mid[m] = start + kMonthDays[m] / 2.0;
    start += kMonthDays[m];
  }
  for (int m = 0; m < 12; ++m) {
    const int next = (m + 1) % 12;
    const double a = mid[m], b = mid[next] + (next == 0 ? 365 : 0);
    const double d = day < mid[0] ? day + 365 : day;
    if (d >= a && d <= b) return at_mid[m] + (at_mid[next] - at_mid[m]) * (d - a) / (b - a);
  }
  return at_mid[0];
}

// Spells of a few days: three waves whose periods share no factor, so no two months are alike.
double spell(double day) {
  return 0.5 * std::cos(2 * pi * day / 5.3) + 0.6 * std::cos(2 * pi * day / 11.9 + 1) +
         0.4 * std::cos(2 * pi * day / 23.7 + 2);
}

// Adds to each month what makes its mean the normal.
void meet_means(std::vector<double>& outdoor, const std::array<double, 12>& means) {
  int hour = 0;
  for (int m = 0; m < 12; ++m) {
    const int hours = 24 * kMonthDays[m];
    double sum = 0;
    for (int h = 0; h < hours; ++h) sum += outdoor[hour + h];
    for (int h = 0; h < hours; ++h) outdoor[hour + h] += means[m] - sum / hours;
    hour += hours;
  }
}

}  // namespace

Result<void> check_normals(const MonthlyNormals& normals) {
  for (int m = 0; m < 12; ++m) {
    const double t = normals.mean[m], range = normals.daily_range[m];
    if (!(t > -60 && t < 60) || !(range >= 0 && range < 40))
      return refuse({"weather_normals", say("normals of month {}", std::to_string(m + 1)),
                     say("{}, range {}", print_quantity(Quantity::temperature, t, UnitSystem::metric),
                         print_quantity(Quantity::temperature_difference, range, UnitSystem::metric)),
                     say("a mean of -60 to 60 C and a daily range of 0 to 40 K"),
                     say("Enter the month's normals again.")});
  }
  return {};
}

Result<WeatherYear> year_from_normals(const MonthlyNormals& normals, double deviation) {
  if (auto ok = check_normals(normals); !ok) return refuse(ok.error());
  const auto [least, most] = std::minmax_element(normals.mean.begin(), normals.mean.end());
  WeatherYear year;
  year.name = normals.name;
  for (int h = 0; h < kWeatherHours; ++h) {
    const double day = h / 24.0;
    const double range = normals.daily_range[month_of_day(h / 24)];
    const double mean = between_months(normals.mean, day);
    // 0 on the warmest day of the year, 1 on the coldest; 0 all year where the months are alike.
    const double coldness = *most > *least ? (*most - mean) / (*most - *least) : 0;
    const double season = 1 + (kWinterSpell - 1) * coldness;
    year.outdoor.push_back(mean + deviation * season * spell(day) +
                           range / 2 * std::cos(2 * pi * (h % 24 - 15) / 24.0));
  }
  meet_means(year.outdoor, normals.mean);
  return year;
}

YearlyWave yearly_wave(const WeatherYear& year) {
  double mean = 0, c = 0, s = 0;
  for (int h = 0; h < kWeatherHours; ++h) {
    const double angle = 2 * pi * (h + 0.5) / kWeatherHours;
    mean += year.outdoor[h];
    c += year.outdoor[h] * std::cos(angle);
    s += year.outdoor[h] * std::sin(angle);
  }
  const double day = std::atan2(-s, -c) * 365 / (2 * pi);
  return {mean / kWeatherHours, 2 * std::hypot(c, s) / kWeatherHours, day < 0 ? day + 365 : day};
}

double heating_degree_days(const WeatherYear& year, double base) {
  double sum = 0;
  for (double t : year.outdoor) sum += std::max(0.0, base - t);
  return sum / 24;
}

double cooling_degree_days(const WeatherYear& year, double base) {
  double sum = 0;
  for (double t : year.outdoor) sum += std::max(0.0, t - base);
  return sum / 24;
}

DesignDays design_days(const WeatherYear& year) {
  std::vector<double> sorted = year.outdoor;
  std::sort(sorted.begin(), sorted.end());
  const std::size_t beyond = sorted.size() * 4 / 1000;
  return {sorted[beyond], sorted[sorted.size() - 1 - beyond]};
}

}  // namespace underlawn
