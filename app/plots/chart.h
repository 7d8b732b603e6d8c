// SPDX-License-Identifier: GPL-3.0-or-later
// What a chart shows, in SI: lines, bands, limits, marks and stacked bars against two axes. Plain data; how
// it is painted is in chart_paint.h, how it is looked at in chart_view.h.
#pragma once

#include <QPointF>
#include <QString>
#include <functional>
#include <vector>

#include "base/quantity.h"

namespace underlawn {

struct ChartTick {
  double at = 0;
  QString text;  // empty: a line of the grid without words
};

struct ChartAxis {
  QString title;             // with the unit
  double low = 0, high = 1;  // at the left and the right, at the foot and the top; low > high turns it over
  std::vector<ChartTick> ticks;
  std::function<QString(double)> words;  // a value as it is read out
};

// Every series has a style, 0..5: a colour that the colour-blind tell apart too, with a dash and a hatch of
// its own.
inline constexpr int kChartStyles = 6;

struct ChartLine {
  QString name;
  std::vector<QPointF>
      points;  // in rising order of what is read along; a y that is no number breaks the line
  int style = 0;
  bool dots = false;  // each point by itself, unjoined
};

struct ChartBand {
  struct Span {
    double x = 0, low = 0, high = 0;
  };
  QString name;
  std::vector<Span> spans;
  int style = 0;
};

// A line across the chart: a bound not to be passed, or a height only to be seen.
struct ChartLimit {
  QString name;
  double y = 0;
  bool bound = true;
};

struct ChartMark {
  QPointF at;
  QString text;
  bool above = true;  // the text, of the point
};

// One bar a place: place i stands from x = i to i + 1. Bars of several series stand on one another.
struct ChartBars {
  QString name;
  std::vector<double> values;  // >= 0
  int style = 0;
};

struct Chart {
  QString title;
  ChartAxis x, y;
  std::vector<ChartBand> bands;
  std::vector<ChartLine> lines;
  std::vector<ChartBars> bars;
  std::vector<ChartLimit> limits;
  std::vector<ChartMark> marks;
  bool read_along_y = false;  // what the pointer reads is at its height, not at its x
  bool stale = false;         // of an earlier plan: drawn pale
  QString empty;              // said in place of the chart where there is nothing to show
  bool has_data() const { return !bands.empty() || !lines.empty() || !bars.empty(); }
};

// An axis of a quantity that holds low..high (SI) with room to spare, with about `wanted` ticks at round
// numbers of the user's unit.
ChartAxis quantity_axis(const QString& title, Quantity quantity, UnitSystem units, double low, double high,
                        int wanted = 5);
// Days of the common year, 0..365, with the months.
ChartAxis year_axis();
// Twelve places, one a month.
ChartAxis month_axis();

// "Last year: 3.4 °C" for each series at a place along the axis that is read along.
std::vector<QString> chart_readings(const Chart& chart, double along);

}  // namespace underlawn
