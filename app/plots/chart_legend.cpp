// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/chart_legend.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>

#include "plots/chart_paint.h"

namespace underlawn {

namespace {

constexpr double kSample = 22, kGapAfter = 12;  // px

enum class Kind { band, line, dots, bars, limit };

struct Entry {
  Kind kind;
  int style;
  QString name;
  QRectF place;  // from the legend's corner
};

std::vector<Entry> entries(const Chart& chart) {
  std::vector<Entry> out;
  for (const ChartBand& b : chart.bands) out.push_back({Kind::band, b.style, b.name, {}});
  for (const ChartLine& l : chart.lines)
    out.push_back({l.dots ? Kind::dots : Kind::line, l.style, l.name, {}});
  for (const ChartBars& b : chart.bars) out.push_back({Kind::bars, b.style, b.name, {}});
  for (const ChartLimit& l : chart.limits)
    if (std::none_of(out.begin(), out.end(), [&](const Entry& e) { return e.name == l.name; }))
      out.push_back({Kind::limit, l.bound ? 1 : 0, l.name, {}});
  std::erase_if(out, [](const Entry& e) { return e.name.isEmpty(); });
  return out;
}

std::vector<Entry> placed(const Chart& chart, double width, const QFont& font) {
  const QFontMetricsF metrics(font);
  std::vector<Entry> out = entries(chart);
  double x = 0, y = 0;
  for (Entry& e : out) {
    const double wide = kSample + 6 + metrics.horizontalAdvance(e.name);
    if (x > 0 && x + wide > width) {
      x = 0;
      y += metrics.height() + 2;
    }
    e.place = {x, y, wide, metrics.height()};
    x += wide + kGapAfter;
  }
  return out;
}

void paint_sample(QPainter& painter, const Entry& e, const QRectF& box, const Theme& theme) {
  painter.setBrush(Qt::NoBrush);
  if (e.kind == Kind::band || e.kind == Kind::bars) {
    painter.setPen(Qt::NoPen);
    if (e.kind == Kind::bars) {
      painter.setBrush(chart_hatch(e.style, theme));
      painter.setPen(QPen(chart_colour(e.style, theme), 1));
    } else {
      QColor fill = chart_colour(e.style, theme);
      fill.setAlphaF(0.3F);
      painter.setBrush(fill);
    }
    return painter.drawRect(box.adjusted(2, 3, -2, -3));
  }
  if (e.kind == Kind::dots) return paint_dot(painter, box.center(), e.style, theme);
  painter.setPen(e.kind == Kind::limit ? limit_pen(e.style == 1, theme) : chart_pen(e.style, theme));
  painter.drawLine(QPointF(box.left(), box.center().y()), QPointF(box.right(), box.center().y()));
}

}  // namespace

QPen chart_pen(int style, const Theme& theme, double width) {
  static const QVector<qreal> dashes[kChartStyles] = {{}, {5, 2}, {1.5, 1.8}, {7, 2, 1.5, 2}, {3, 3}, {9, 3}};
  QPen pen(chart_colour(style, theme), width, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin);
  const QVector<qreal>& dash = dashes[style % kChartStyles];
  if (!dash.isEmpty()) pen.setDashPattern(dash);
  return pen;
}

void paint_dot(QPainter& painter, QPointF at, int style, const Theme& theme) {
  painter.setPen(QPen(theme.paper, 1));
  painter.setBrush(chart_colour(style, theme));
  painter.drawEllipse(at, 3.2, 3.2);
}

QBrush chart_hatch(int style, const Theme& theme) {
  static constexpr Qt::BrushStyle hatches[kChartStyles] = {Qt::SolidPattern,     Qt::BDiagPattern,
                                                           Qt::DiagCrossPattern, Qt::FDiagPattern,
                                                           Qt::HorPattern,       Qt::CrossPattern};
  return {chart_colour(style, theme), hatches[style % kChartStyles]};
}

QPen limit_pen(bool bound, const Theme& theme) {
  QPen pen(bound ? theme.error : theme.text, 1.4);
  pen.setDashPattern({8, 3});
  return pen;
}

double legend_height(const Chart& chart, double width, const QFont& font) {
  const auto all = placed(chart, width, font);
  return all.empty() ? 0 : all.back().place.bottom() + 6;
}

void paint_legend(QPainter& painter, const Chart& chart, const QRectF& area, const Theme& theme) {
  for (const Entry& e : placed(chart, area.width(), painter.font())) {
    const QRectF box = e.place.translated(area.topLeft());
    paint_sample(painter, e, {box.left(), box.top(), kSample, box.height()}, theme);
    painter.setPen(theme.text);
    painter.drawText(box.adjusted(kSample + 6, 0, 20, 0), Qt::AlignLeft | Qt::AlignVCenter, e.name);
  }
}

}  // namespace underlawn
