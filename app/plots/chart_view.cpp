// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/chart_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>

#include "plots/chart_paint.h"
#include "window/theme_now.h"

namespace underlawn {

ChartView::ChartView(int height, QWidget* parent) : QWidget(parent), height_(height) {
  setMouseTracking(true);
  setFocusPolicy(Qt::StrongFocus);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, [this] { update(); });
}

void ChartView::set_chart(Chart chart) {
  chart_ = std::move(chart);
  if (!chart_.has_data()) reading_.reset();
  setAccessibleName(chart_.title);
  update();
}

QRectF ChartView::area() const {
  return QRectF(rect()).adjusted(8, 6, -8, -6);
}

QFont ChartView::chart_font() const {
  QFont f = font();
  f.setPixelSize(12);
  return f;
}

QPointF ChartView::place_of(QPointF value) const {
  return chart_frame(chart_, area(), chart_font()).at(value);
}

void ChartView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setFont(chart_font());
  const Theme& theme = theme_now();
  painter.fillRect(rect(), theme.paper);
  paint_chart(painter, chart_, area(), theme);
  if (reading_) paint_reading(painter, chart_, area(), theme, *reading_);
  if (!hasFocus()) return;
  painter.setPen(QPen(theme.focus, 2));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
}

void ChartView::read_at(std::optional<double> place) {
  reading_ = place;
  QString said;
  if (place) {
    said = read_axis().words(*place);
    for (const QString& text : chart_readings(chart_, *place)) said += "; " + text;
  }
  setAccessibleDescription(said);
  update();
}

void ChartView::mouseMoveEvent(QMouseEvent* event) {
  const ChartFrame f = chart_frame(chart_, area(), chart_font());
  if (!chart_.has_data() || !f.plot.contains(event->position())) return read_at({});
  const QPointF value = f.value(event->position());
  read_at(chart_.read_along_y ? value.y() : value.x());
}

void ChartView::leaveEvent(QEvent*) {
  read_at({});
}

void ChartView::focusOutEvent(QFocusEvent* event) {
  read_at({});
  QWidget::focusOutEvent(event);
}

void ChartView::keyPressEvent(QKeyEvent* event) {
  const ChartAxis& axis = read_axis();
  const double low = std::min(axis.low, axis.high), high = std::max(axis.low, axis.high);
  const bool up_is_less = axis.low > axis.high;
  const int more = chart_.read_along_y ? (up_is_less ? Qt::Key_Down : Qt::Key_Up) : Qt::Key_Right;
  const int less = chart_.read_along_y ? (up_is_less ? Qt::Key_Up : Qt::Key_Down) : Qt::Key_Left;
  const double step = (high - low) / (chart_.bars.empty() ? 73 : 12), middle = (low + high) / 2;
  const int key = event->key();
  if (!chart_.has_data()) return QWidget::keyPressEvent(event);
  if (key == more || key == less)
    return read_at(std::clamp(reading_ ? *reading_ + (key == more ? step : -step) : middle, low, high));
  if (key == Qt::Key_Home || key == Qt::Key_End) return read_at(key == Qt::Key_Home ? low : high);
  if (key == Qt::Key_Escape && reading_) return read_at({});
  QWidget::keyPressEvent(event);
}

}  // namespace underlawn
