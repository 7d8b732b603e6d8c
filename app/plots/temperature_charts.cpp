// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/temperature_charts.h"

#include <QObject>
#include <algorithm>
#include <array>
#include <cmath>

#include "house/calendar.h"

namespace underlawn {

namespace {

constexpr int kDays = kYearHours / 24;
constexpr double kDeepest = 8;  // m shown of the ground
constexpr double kHour = 3600;

QString tr(const char* text) {
  return QObject::tr(text);
}

QString no_temperatures() {
  return tr(
      "Nothing to show yet: the temperatures follow once a loop is laid and what is asked of soil, house "
      "and heat pump is sound. The report says what is missing.");
}

struct Day {
  double low = 1e9, high = -1e9, mean = 0;
};

// Of the hours in which the unit ran; of all where it did not, when the loop rests at the ground's
// temperature.
Day day_of(const std::vector<HourState>& year, int day) {
  Day out;
  const auto first = year.begin() + 24 * day;
  const bool ran = std::any_of(first, first + 24, [](const HourState& h) { return h.ground_heat != 0; });
  int hours = 0;
  for (auto h = first; h != first + 24; ++h) {
    if (ran && h->ground_heat == 0) continue;
    out.low = std::min(out.low, h->entering);
    out.high = std::max(out.high, h->entering);
    out.mean += h->entering;
    ++hours;
  }
  out.mean /= hours;
  return out;
}

ChartLine mean_line(const QString& name, const std::vector<HourState>& year, int style) {
  ChartLine line{name, {}, style};
  for (int d = 0; d < kDays; ++d) line.points.push_back({d + 0.5, day_of(year, d).mean});
  return line;
}

ChartBand spread_band(const QString& name, const std::vector<HourState>& year, int style) {
  ChartBand band{name, {}, style};
  for (int d = 0; d < kDays; ++d) {
    const Day day = day_of(year, d);
    band.spans.push_back({d + 0.5, day.low, day.high});
  }
  return band;
}

// The coldest or warmest hour of all years.
void mark_hour(const Simulation& s, bool cold, UnitSystem units, Chart& chart) {
  const auto worse = [cold](const YearSum& a, const YearSum& b) {
    return cold ? a.coldest < b.coldest : a.warmest > b.warmest;
  };
  const auto year = std::min_element(s.years.begin(), s.years.end(), worse);
  const int hour = cold ? year->coldest_hour : year->warmest_hour;
  if (hour < 0) return;
  const double at = cold ? year->coldest : year->warmest;
  chart.marks.push_back({{hour / 24.0, at},
                         tr("%1, %2, year %3")
                             .arg(QString::fromStdString(print_quantity(Quantity::temperature, at, units)),
                                  QString::fromStdString(date_of_hour(hour)))
                             .arg(year - s.years.begin() + 1),
                         !cold});
}

void fit_water_axis(const Plan& plan, Chart& chart) {
  double low = plan.thermal.coldest_allowed, high = plan.thermal.warmest_allowed;
  for (const ChartBand& band : chart.bands)
    for (const ChartBand::Span& s : band.spans) {
      low = std::min(low, s.low);
      high = std::max(high, s.high);
    }
  for (const ChartMark& m : chart.marks) {
    low = std::min(low, m.at.y());
    high = std::max(high, m.at.y());
  }
  chart.y = quantity_axis(tr("Entering water"), Quantity::temperature, plan.units, low - 2, high + 2);
}

using Months = std::array<double, 12>;

template <class Value>
std::vector<double> by_month(const Value& value) {  // J
  std::vector<double> sum(12);
  for (int h = 0; h < kYearHours; ++h)
    sum[static_cast<std::size_t>(month_of_day(h / 24))] += value(static_cast<std::size_t>(h)) * kHour;
  return sum;
}

void add_ground_load(const std::vector<double>& load, Chart& chart) {
  chart.bars.push_back(
      {tr("Taken from the ground"), by_month([&](std::size_t h) { return std::max(0.0, load[h]); }), 0});
  chart.bars.push_back(
      {tr("Given to it"), by_month([&](std::size_t h) { return std::max(0.0, -load[h]); }), 1});
}

void add_house_load(const HouseYear& house, const std::vector<HourState>& year, Chart& chart) {
  const auto backup = [&](std::size_t h) { return year.empty() ? 0.0 : year[h].backup; };
  chart.bars.push_back({tr("Heat by the heat pump"),
                        by_month([&](std::size_t h) { return std::max(0.0, house.heating[h] - backup(h)); }),
                        0});
  chart.bars.push_back({tr("Back-up heat"), by_month(backup), 3});
  chart.bars.push_back({tr("Cooling"), by_month([&](std::size_t h) { return house.cooling[h]; }), 1});
}

}  // namespace

Chart water_chart(const Plan& plan, const Outcome& outcome) {
  Chart chart;
  chart.title = tr("Water entering the heat pump");
  chart.empty = no_temperatures();
  if (!outcome.temperatures || outcome.temperatures->simulation.last.empty()) return chart;
  const Simulation& s = outcome.temperatures->simulation;
  const int years = static_cast<int>(s.years.size());
  chart.x = year_axis();
  chart.bands.push_back(spread_band(tr("Year %1, coldest to warmest of a day").arg(years), s.last, 0));
  if (years > 1) chart.lines.push_back(mean_line(tr("Year 1, mean"), s.first, 1));
  if (years > 10 && !s.tenth.empty()) chart.lines.push_back(mean_line(tr("Year 10"), s.tenth, 2));
  chart.lines.push_back(mean_line(tr("Year %1").arg(years), s.last, 0));
  chart.limits.push_back({tr("Limits"), plan.thermal.coldest_allowed});
  chart.limits.push_back({tr("Limits"), plan.thermal.warmest_allowed});
  mark_hour(s, true, plan.units, chart);
  mark_hour(s, false, plan.units, chart);
  fit_water_axis(plan, chart);
  return chart;
}

Chart ground_chart(const Plan& plan, const Outcome& outcome) {
  Chart chart;
  chart.title = tr("Ground without the loop, by depth");
  chart.empty = no_temperatures();
  if (!outcome.surroundings) return chart;
  const Surroundings& s = *outcome.surroundings;
  const std::pair<QString, int> seasons[] = {
      {tr("15 Jan"), 14}, {tr("15 Apr"), 104}, {tr("15 Jul"), 195}, {tr("15 Oct"), 287}};
  for (int i = 0; i < 4; ++i) {
    ChartLine line{seasons[i].first, {}, i};
    for (int n = 0; n <= 80; ++n) {
      const double z = kDeepest * n / 80;
      line.points.push_back(
          {undisturbed_temperature(s.climate, s.soil.diffusivity(), z, seasons[i].second), z});
    }
    chart.lines.push_back(std::move(line));
  }
  const double swing = std::abs(s.climate.amplitude);
  chart.x = quantity_axis(tr("Ground"), Quantity::temperature, plan.units, s.climate.mean - swing,
                          s.climate.mean + swing);
  chart.y = quantity_axis(tr("Depth"), Quantity::length, plan.units, 0, kDeepest);
  std::swap(chart.y.low, chart.y.high);
  chart.read_along_y = true;
  if (outcome.temperatures)
    chart.limits.push_back({tr("Mean depth of the pipe"), outcome.temperatures->depth, false});
  return chart;
}

Chart load_chart(const Plan& plan, const Outcome& outcome) {
  Chart chart;
  chart.title = tr("Load by month");
  chart.empty = no_temperatures();
  if (!outcome.surroundings) return chart;
  const Surroundings& s = *outcome.surroundings;
  static const std::vector<HourState> none;
  if (!s.ground_hours.empty())
    add_ground_load(s.ground_hours, chart);
  else if (s.house.heating.size() == kYearHours && s.house.cooling.size() == kYearHours)
    add_house_load(s.house, outcome.temperatures ? outcome.temperatures->simulation.last : none, chart);
  Months tallest{};
  for (const ChartBars& series : chart.bars)
    for (std::size_t m = 0; m < 12; ++m) tallest[m] += series.values[m];
  chart.x = month_axis();
  chart.y = quantity_axis(tr("Energy"), Quantity::energy, plan.units, 0,
                          *std::max_element(tallest.begin(), tallest.end()));
  return chart;
}

}  // namespace underlawn
