// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/test_chart.h"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "flow/test_procedure.h"
#include "flow/test_verdict.h"

namespace underlawn {

namespace {

QString tr(const char* text) {
  return QObject::tr(text);
}

QString title() {
  return tr("Pressure since the valve was shut");
}

QString minutes(double seconds) {
  return tr("%1 min").arg(std::round(seconds / 6) / 10);
}

ChartAxis minute_axis(double end) {
  ChartAxis axis;
  axis.title = tr("Since the valve was shut, min");
  axis.high = end;
  double step = 86400;
  for (double m : {1, 5, 10, 15, 30, 60, 120, 240})
    if (end / (60 * m) <= 7) {
      step = 60 * m;
      break;
    }
  for (double t = 0; t <= end * (1 + 1e-9); t += step) axis.ticks.push_back({t, QString::number(t / 60)});
  axis.words = minutes;
  return axis;
}

ChartLine line_of(const QString& name, const TestCurve& curve, double start, int style) {
  ChartLine line{name, {{0, curve.pressure_at(start)}}, style};
  for (std::size_t i = 0; i < curve.time.size(); ++i)
    if (curve.time[i] > start) line.points.push_back({curve.time[i] - start, curve.pressure[i]});
  return line;
}

ChartBand band_of(const TestBand& band, double start) {
  ChartBand out{tr("Bounds of a sound loop"), {{0, band.low_at(start), band.high_at(start)}}, 0};
  for (std::size_t i = 0; i < band.expected.time.size(); ++i)
    if (band.expected.time[i] > start)
      out.spans.push_back({band.expected.time[i] - start, band.low[i], band.high[i]});
  return out;
}

void add_limits(const TestPicture& p, double start, Chart& chart) {
  const double shut = p.band.expected.pressure_at(start);
  chart.limits.push_back({tr("Shut in at"), shut, false});
  if (p.procedure != TestProcedure::rebound) return;
  const double first = p.readings.empty() ? shut : p.readings.front().pressure;
  for (int side : {-1, 1})
    chart.limits.push_back({tr("ASTM F2164: 5 % either way"), first * (1 + side * kReboundTolerance)});
}

void fit_pressures(UnitSystem units, Chart& chart) {
  double low = 1e300, high = 0;
  const auto take = [&](double v) {
    low = std::min(low, v);
    high = std::max(high, v);
  };
  for (const ChartBand::Span& s : chart.bands[0].spans) {
    take(s.low);
    take(s.high);
  }
  for (const ChartLine& l : chart.lines)
    for (const QPointF& at : l.points) take(at.y());
  for (const ChartLimit& l : chart.limits) take(l.y);
  const double room = 0.04 * (high - low);
  chart.y = quantity_axis(tr("Pressure at the gauge"), Quantity::pressure, units, std::max(0.0, low - room),
                          high + room);
}

}  // namespace

Chart test_chart(const TestPicture& p, UnitSystem units) {
  Chart chart;
  chart.title = title();
  const double start = shut_in_start(p.programme);
  double end = programme_end(p.programme) - start;
  chart.bands.push_back(band_of(p.band, start));
  chart.lines.push_back(line_of(tr("A sound loop"), p.band.expected, start, 0));
  chart.lines.push_back(line_of(tr("A leak of %1").arg(QString::fromStdString(leak_text(p.leak_size, units))),
                                p.leak, start, 1));
  if (!p.readings.empty()) {
    ChartLine read{tr("Read"), {}, 5, true};
    for (const PressureReading& r : p.readings)
      if (r.time >= 0) read.points.push_back({r.time, r.pressure});
    end = std::max(end, p.readings.back().time);
    chart.lines.push_back(std::move(read));
  }
  chart.x = minute_axis(end);
  add_limits(p, start, chart);
  fit_pressures(units, chart);
  return chart;
}

Chart no_test_chart() {
  Chart chart;
  chart.title = title();
  chart.empty = tr("Nothing to show yet: the curves follow once a loop is laid and the test is sound.");
  return chart;
}

}  // namespace underlawn
