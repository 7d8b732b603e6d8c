// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/chart_paint.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <QVector>
#include <algorithm>
#include <cmath>
#include <limits>

#include "plots/chart_legend.h"

namespace underlawn {

namespace {

constexpr double kPale = 0.35;  // of what is of an earlier plan

QFont bold(QFont font) {
  font.setWeight(QFont::DemiBold);
  return font;
}

double widest_tick(const ChartAxis& axis, const QFontMetricsF& metrics) {
  double widest = 0;
  for (const ChartTick& t : axis.ticks) widest = std::max(widest, metrics.horizontalAdvance(t.text));
  return widest;
}

double head_height(const Chart& chart, const QRectF& area, const QFont& font) {
  const double line = QFontMetricsF(font).height();
  return (chart.title.isEmpty() ? 0 : line + 4) + legend_height(chart, area.width(), font) + line + 4;
}

// Every how many ticks one has room for its words.
int words_every(const std::vector<ChartTick>& ticks, const ChartFrame& f, const QFontMetricsF& metrics) {
  std::vector<const ChartTick*> worded;
  for (const ChartTick& t : ticks)
    if (!t.text.isEmpty()) worded.push_back(&t);
  for (std::size_t i = 1; i < worded.size(); ++i) {
    const double room = std::abs(f.at({worded[i]->at, 0}).x() - f.at({worded[i - 1]->at, 0}).x());
    const QString both = worded[i]->text + worded[i - 1]->text;
    if (metrics.horizontalAdvance(both) / 2 + 3 > room) return 2;
  }
  return 1;
}

void paint_x_axis(QPainter& painter, const Chart& chart, const ChartFrame& f, const Theme& theme) {
  const QFontMetricsF metrics(painter.font());
  const bool own_grid = std::any_of(chart.x.ticks.begin(), chart.x.ticks.end(),
                                    [](const ChartTick& t) { return t.text.isEmpty(); });
  const int every = words_every(chart.x.ticks, f, metrics);
  int worded = 0;
  for (const ChartTick& t : chart.x.ticks) {
    const double x = f.at({t.at, f.y_low}).x();
    painter.setPen(QPen(theme.line, 1));
    if (chart.bars.empty() && (t.text.isEmpty() || !own_grid))
      painter.drawLine(QPointF(x, f.plot.top()), QPointF(x, f.plot.bottom()));
    if (t.text.isEmpty() || worded++ % every != 0) continue;
    painter.setPen(theme.faint);
    painter.drawText(
        QPointF(x - metrics.horizontalAdvance(t.text) / 2, f.plot.bottom() + metrics.ascent() + 4), t.text);
  }
  if (chart.x.title.isEmpty()) return;
  painter.setPen(theme.faint);
  painter.drawText(
      QRectF(f.plot.left(), f.plot.bottom() + metrics.height() + 3, f.plot.width(), metrics.height()),
      Qt::AlignRight | Qt::AlignTop, chart.x.title);
}

void paint_y_axis(QPainter& painter, const Chart& chart, const QRectF& area, const ChartFrame& f,
                  const Theme& theme) {
  const QFontMetricsF metrics(painter.font());
  for (const ChartTick& t : chart.y.ticks) {
    const double y = f.at({f.x_low, t.at}).y();
    painter.setPen(QPen(theme.line, 1));
    painter.drawLine(QPointF(f.plot.left(), y), QPointF(f.plot.right(), y));
    painter.setPen(theme.faint);
    painter.drawText(
        QRectF(area.left(), y - metrics.height() / 2, f.plot.left() - area.left() - 5, metrics.height()),
        Qt::AlignRight | Qt::AlignVCenter, t.text);
  }
  painter.setPen(theme.faint);
  painter.drawText(QRectF(area.left(), f.plot.top() - metrics.height() - 5, area.width(), metrics.height()),
                   Qt::AlignLeft | Qt::AlignVCenter, chart.y.title);
}

void paint_band(QPainter& painter, const ChartBand& band, const ChartFrame& f, const Theme& theme) {
  QColor fill = chart_colour(band.style, theme);
  fill.setAlphaF(0.3F);
  painter.setPen(Qt::NoPen);
  painter.setBrush(fill);
  QPolygonF top, foot;
  const auto close = [&] {
    std::reverse(foot.begin(), foot.end());
    if (top.size() > 1) painter.drawPolygon(top + foot);
    top.clear();
    foot.clear();
  };
  for (const ChartBand::Span& s : band.spans) {
    if (!std::isfinite(s.low) || !std::isfinite(s.high)) {
      close();
      continue;
    }
    top << f.at({s.x, s.high});
    foot << f.at({s.x, s.low});
  }
  close();
}

void paint_line(QPainter& painter, const ChartLine& line, const ChartFrame& f, const Theme& theme) {
  if (line.dots) {
    for (const QPointF& p : line.points)
      if (std::isfinite(p.x()) && std::isfinite(p.y())) paint_dot(painter, f.at(p), line.style, theme);
    return;
  }
  painter.setBrush(Qt::NoBrush);
  painter.setPen(chart_pen(line.style, theme));
  QPolygonF part;
  for (const QPointF& p : line.points) {
    if (std::isfinite(p.x()) && std::isfinite(p.y())) {
      part << f.at(p);
      continue;
    }
    painter.drawPolyline(part);
    part.clear();
  }
  painter.drawPolyline(part);
}

void paint_bars(QPainter& painter, const Chart& chart, const ChartFrame& f, const Theme& theme) {
  std::vector<double> stands;
  for (const ChartBars& series : chart.bars) {
    stands.resize(std::max(stands.size(), series.values.size()), 0.0);
    painter.setPen(QPen(chart_colour(series.style, theme), 1));
    painter.setBrush(chart_hatch(series.style, theme));
    for (std::size_t i = 0; i < series.values.size(); ++i) {
      if (!(series.values[i] > 0)) continue;
      const double x = static_cast<double>(i), from = stands[i];
      stands[i] += series.values[i];
      painter.drawRect(QRectF(f.at({x + 0.15, stands[i]}), f.at({x + 0.85, from})));
    }
  }
}

void paint_limits(QPainter& painter, const Chart& chart, const ChartFrame& f, const Theme& theme) {
  for (const ChartLimit& l : chart.limits) {
    painter.setPen(limit_pen(l.bound, theme));
    painter.drawLine(f.at({f.x_low, l.y}), f.at({f.x_high, l.y}));
  }
}

double points_in(const QRectF& box, const std::vector<QPointF>& points, const ChartFrame& f) {
  return static_cast<double>(
      std::count_if(points.begin(), points.end(), [&](const QPointF& p) { return box.contains(f.at(p)); }));
}

// How much a text there hides, in pixels it would rather be moved.
double hidden_by(const QRectF& box, const Chart& chart, const ChartFrame& f, const QVector<QRectF>& taken) {
  constexpr double kLimit = 300, kText = 1000, kPoint = 8;
  double hidden = 0;
  for (const ChartLimit& l : chart.limits) {
    const double y = f.at({f.x_low, l.y}).y();
    if (y > box.top() - 1 && y < box.bottom() + 1) hidden += kLimit;
  }
  for (const ChartLine& l : chart.lines) hidden += kPoint * points_in(box, l.points, f);
  for (const QRectF& t : taken)
    if (t.intersects(box)) hidden += kText;
  return hidden;
}

// Near its point, but over no limit, no curve and no other text where there is room.
QRectF mark_box(const ChartMark& m, QSizeF size, const Chart& chart, const ChartFrame& f,
                const QVector<QRectF>& taken) {
  const QPointF at = f.at(m.at);
  const QRectF room = f.plot.adjusted(1, 1, -1, -1);
  QRectF best;
  double least = std::numeric_limits<double>::infinity();
  for (int step = 0; step < 40; ++step)
    for (const bool above : {m.above, !m.above})
      for (const double across : {-0.5, -1.0, 0.0}) {
        QRectF box(QPointF(at.x() + across * size.width(),
                           above ? at.y() - 8 - size.height() - 4.0 * step : at.y() + 8 + 4.0 * step),
                   size);
        box.moveLeft(std::clamp(box.left(), room.left(), std::max(room.left(), room.right() - box.width())));
        if (box.top() < room.top() || box.bottom() > room.bottom()) continue;
        const double cost = hidden_by(box, chart, f, taken) + 4.0 * step + (above == m.above ? 0 : 4);
        if (cost < least) least = cost, best = box;
      }
  return best.isNull() ? QRectF(room.topLeft(), size) : best;
}

void paint_marks(QPainter& painter, const Chart& chart, const ChartFrame& f, const Theme& theme) {
  const QVector<QRectF> boxes = mark_boxes(chart, f, painter.font());
  for (qsizetype i = 0; i < boxes.size(); ++i) {
    const ChartMark& m = chart.marks[static_cast<std::size_t>(i)];
    const QRectF& box = boxes[i];
    painter.setPen(QPen(theme.paper, 1.5));
    painter.setBrush(theme.text);
    painter.drawEllipse(f.at(m.at), 4.5, 4.5);
    QColor back = theme.paper;
    back.setAlphaF(0.85F);
    painter.setPen(Qt::NoPen);
    painter.setBrush(back);
    painter.drawRoundedRect(box, 3, 3);
    painter.setPen(theme.text);
    painter.drawText(box, Qt::AlignCenter, m.text);
  }
}

void paint_inside(QPainter& painter, const Chart& chart, const ChartFrame& f, const Theme& theme) {
  painter.save();
  painter.setClipRect(f.plot.adjusted(-1, -1, 1, 1));
  for (const ChartBand& b : chart.bands) paint_band(painter, b, f, theme);
  paint_bars(painter, chart, f, theme);
  paint_limits(painter, chart, f, theme);
  for (const ChartLine& l : chart.lines) paint_line(painter, l, f, theme);
  painter.restore();
  paint_marks(painter, chart, f, theme);
}

}  // namespace

QVector<QRectF> mark_boxes(const Chart& chart, const ChartFrame& frame, const QFont& font) {
  const QFontMetricsF metrics(font);
  QVector<QRectF> boxes;
  for (const ChartMark& m : chart.marks)
    boxes << mark_box(m, {metrics.horizontalAdvance(m.text) + 8, metrics.height() + 1}, chart, frame, boxes);
  return boxes;
}

QPointF ChartFrame::at(QPointF v) const {
  return {plot.left() + plot.width() * (v.x() - x_low) / (x_high - x_low),
          plot.bottom() - plot.height() * (v.y() - y_low) / (y_high - y_low)};
}

QPointF ChartFrame::value(QPointF d) const {
  return {x_low + (x_high - x_low) * (d.x() - plot.left()) / plot.width(),
          y_low + (y_high - y_low) * (plot.bottom() - d.y()) / plot.height()};
}

ChartFrame chart_frame(const Chart& chart, const QRectF& area, const QFont& font) {
  const QFontMetricsF metrics(font);
  const double left = widest_tick(chart.y, metrics) + 8, head = head_height(chart, area, font);
  const double foot = metrics.height() * (chart.x.title.isEmpty() ? 1 : 2) + 6;
  const QRectF plot(area.left() + left, area.top() + head, std::max(10.0, area.width() - left - 8),
                    std::max(10.0, area.height() - head - foot));
  return {plot, chart.x.low, chart.x.high, chart.y.low, chart.y.high};
}

// Okabe & Ito's set for all kinds of colour vision, darkened for light paper and lightened for dark where 3:1
// asks for it. Common practice, no source.
QColor chart_colour(int style, const Theme& theme) {
  static const char* const light[kChartStyles] = {"#0072b2", "#c44e00", "#00795a",
                                                  "#a8447c", "#8a6d00", "#40423f"};
  static const char* const night[kChartStyles] = {"#56b4e9", "#f0883e", "#2fc79a",
                                                  "#e29ac2", "#f0e442", "#c9c5ba"};
  return {(theme.dark ? night : light)[style % kChartStyles]};
}

void paint_chart(QPainter& painter, const Chart& chart, const QRectF& area, const Theme& theme) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const QFont font = painter.font();
  const double line = QFontMetricsF(font).height();
  painter.setPen(theme.text);
  painter.setFont(bold(font));
  painter.drawText(QRectF(area.left(), area.top(), area.width(), line), Qt::AlignLeft, chart.title);
  painter.setFont(font);
  if (!chart.has_data()) {
    painter.setPen(theme.faint);
    painter.drawText(area.adjusted(0, line + 6, 0, 0), Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap,
                     chart.empty);
    return painter.restore();
  }
  if (chart.stale) painter.setOpacity(kPale);
  const ChartFrame f = chart_frame(chart, area, font);
  const double under_title = chart.title.isEmpty() ? 0 : line + 4;
  paint_legend(painter, chart, area.adjusted(0, under_title, 0, 0), theme);
  paint_x_axis(painter, chart, f, theme);
  paint_y_axis(painter, chart, area, f, theme);
  paint_inside(painter, chart, f, theme);
  painter.restore();
}

void paint_reading(QPainter& painter, const Chart& chart, const QRectF& area, const Theme& theme,
                   double place) {
  const ChartFrame f = chart_frame(chart, area, painter.font());
  const ChartAxis& read = chart.read_along_y ? chart.y : chart.x;
  QStringList lines{read.words(place)};
  for (const QString& text : chart_readings(chart, place)) lines << text;
  const QFontMetricsF metrics(painter.font());
  double wide = 0;
  for (const QString& text : lines) wide = std::max(wide, metrics.horizontalAdvance(text));
  const QPointF at = f.at(chart.read_along_y ? QPointF(f.x_low, place) : QPointF(place, f.y_low));
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(theme.text, 1));
  if (chart.read_along_y)
    painter.drawLine(QPointF(f.plot.left(), at.y()), QPointF(f.plot.right(), at.y()));
  else
    painter.drawLine(QPointF(at.x(), f.plot.top()), QPointF(at.x(), f.plot.bottom()));
  QRectF card(0, 0, wide + 14, metrics.height() * static_cast<double>(lines.size()) + 8);
  const bool beyond = chart.read_along_y || at.x() + card.width() + 8 > area.right();
  card.moveLeft(std::max(area.left(), beyond ? at.x() - card.width() - 8 : at.x() + 8));
  card.moveTop(f.plot.top() + 4);
  if (chart.read_along_y) {
    card.moveRight(f.plot.right() - 2);
    card.moveTop(at.y() + 6 + card.height() > area.bottom() ? at.y() - 6 - card.height() : at.y() + 6);
  }
  painter.setPen(QPen(theme.edge, 1));
  painter.setBrush(theme.paper);
  painter.drawRoundedRect(card, 5, 5);
  painter.setPen(theme.text);
  painter.drawText(card.adjusted(7, 4, -7, -4), Qt::AlignLeft | Qt::AlignTop, lines.join('\n'));
  painter.restore();
}

}  // namespace underlawn
