// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/chart.h"

#include <QObject>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "base/units.h"
#include "house/calendar.h"

namespace underlawn {

namespace {

QStringList month_names() {
  return {QObject::tr("Jan"), QObject::tr("Feb"), QObject::tr("Mar"), QObject::tr("Apr"),
          QObject::tr("May"), QObject::tr("Jun"), QObject::tr("Jul"), QObject::tr("Aug"),
          QObject::tr("Sep"), QObject::tr("Oct"), QObject::tr("Nov"), QObject::tr("Dec")};
}

// The round step, 1, 2 or 5 times a power of ten, that cuts `span` into at most `wanted` pieces.
double round_step(double span, int wanted) {
  const double least = span / wanted, power = std::pow(10, std::floor(std::log10(least)));
  for (double times : {1.0, 2.0, 5.0})
    if (times * power >= least * (1 - 1e-9)) return times * power;
  return 10 * power;
}

double along(const Chart& chart, QPointF p) {
  return chart.read_along_y ? p.y() : p.x();
}

// Between the two points round the place; not-a-number beyond the ends.
double value_at(const Chart& chart, const ChartLine& line, double place) {
  for (std::size_t i = 1; i < line.points.size(); ++i) {
    const QPointF a = line.points[i - 1], b = line.points[i];
    const double from = along(chart, a), to = along(chart, b);
    if (place < std::min(from, to) || place > std::max(from, to) || from == to) continue;
    const QPointF p = a + (place - from) / (to - from) * (b - a);
    return chart.read_along_y ? p.x() : p.y();
  }
  return std::nan("");
}

QString band_reading(const Chart& chart, const ChartBand& band, double place) {
  const auto near = std::min_element(band.spans.begin(), band.spans.end(), [&](const auto& a, const auto& b) {
    return std::abs(a.x - place) < std::abs(b.x - place);
  });
  if (near == band.spans.end() || !std::isfinite(near->low)) return {};
  return QObject::tr("%1: %2 to %3").arg(band.name, chart.y.words(near->low), chart.y.words(near->high));
}

}  // namespace

ChartAxis quantity_axis(const QString& title, Quantity quantity, UnitSystem units, double low, double high,
                        int wanted) {
  if (!(high > low)) high = low + 1;
  const ShownUnit& unit = shown_unit(quantity, units, std::max(std::abs(low), std::abs(high)));
  const auto shown = [&](double si) { return (si - unit.offset) / unit.factor; };
  const double step = round_step(shown(high) - shown(low), wanted);
  const double first = std::floor(shown(low) / step + 1e-9), last = std::ceil(shown(high) / step - 1e-9);
  const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
  ChartAxis axis;
  const QString unit_text = QString::fromUtf8(unit.text.data(), static_cast<int>(unit.text.size())).trimmed();
  axis.title = unit_text.isEmpty() ? title : QString("%1, %2").arg(title, unit_text);
  axis.low = first * step * unit.factor + unit.offset;
  axis.high = last * step * unit.factor + unit.offset;
  for (double n = first; n <= last; ++n)
    axis.ticks.push_back(
        {n * step * unit.factor + unit.offset, QString::number(n * step + 0.0, 'f', decimals)});
  axis.words = [quantity, units](double si) {
    return QString::fromStdString(print_quantity(quantity, si, units));
  };
  return axis;
}

// The grid stands at the first of each month, its name in the middle of it.
ChartAxis year_axis() {
  ChartAxis axis;
  axis.high = 365;
  const QStringList names = month_names();
  double day = 0;
  for (int m = 0; m < 12; ++m) {
    axis.ticks.push_back({day, {}});
    axis.ticks.push_back({day + kMonthDays[m] / 2.0, names[m]});
    day += kMonthDays[m];
  }
  axis.words = [](double d) {
    return QString::fromStdString(date_of_day(std::clamp(static_cast<int>(std::floor(d)), 0, 364)));
  };
  return axis;
}

ChartAxis month_axis() {
  ChartAxis axis;
  axis.high = 12;
  const QStringList names = month_names();
  for (int m = 0; m < 12; ++m) axis.ticks.push_back({m + 0.5, names[m]});
  axis.words = [names](double x) { return names[std::clamp(static_cast<int>(std::floor(x)), 0, 11)]; };
  return axis;
}

std::vector<QString> chart_readings(const Chart& chart, double place) {
  std::vector<QString> out;
  const ChartAxis& read = chart.read_along_y ? chart.x : chart.y;
  for (const ChartBand& b : chart.bands)
    if (QString text = band_reading(chart, b, place); !text.isEmpty()) out.push_back(std::move(text));
  for (const ChartLine& l : chart.lines)
    if (const double v = value_at(chart, l, place); std::isfinite(v))
      out.push_back(l.name + ": " + read.words(v));
  const double bar = std::floor(place);
  for (const ChartBars& b : chart.bars)
    if (bar >= 0 && bar < static_cast<double>(b.values.size()))
      out.push_back(b.name + ": " + read.words(b.values[static_cast<std::size_t>(bar)]));
  return out;
}

}  // namespace underlawn
