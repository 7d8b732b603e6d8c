// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/column_grip.h"

#include <QMouseEvent>
#include <QPainter>
#include <QSettings>
#include <algorithm>

#include "window/theme_now.h"

namespace underlawn {

namespace {

constexpr int kWide = 9;  // px: to be caught without aiming
constexpr const char* kKept = "window/side_width";

}  // namespace

ColumnGrip::ColumnGrip(QWidget& column, int least, int most) : column_(column), least_(least), most_(most) {
  setFixedWidth(kWide);
  setCursor(Qt::SplitHCursor);
  setToolTip(tr("Drag to make the column wider; a double click makes it as it was."));
  setAccessibleName(tr("Width of the column"));
  take(QSettings().value(kKept, least).toInt());
}

void ColumnGrip::take(int width) {
  column_.setFixedWidth(std::clamp(width, least_, most_));
}

void ColumnGrip::mousePressEvent(QMouseEvent* event) {
  from_ = qRound(event->globalPosition().x());
  width_ = column_.width();
}

void ColumnGrip::mouseMoveEvent(QMouseEvent* event) {
  if (event->buttons().testFlag(Qt::LeftButton)) take(width_ + from_ - qRound(event->globalPosition().x()));
}

void ColumnGrip::mouseReleaseEvent(QMouseEvent*) {
  QSettings().setValue(kKept, column_.width());
}

void ColumnGrip::mouseDoubleClickEvent(QMouseEvent*) {
  take(least_);
}

// Three dots, so that it is seen to be held.
void ColumnGrip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.fillRect(rect(), theme_now().line);
  painter.setPen(Qt::NoPen);
  painter.setBrush(theme_now().faint);
  for (int i = -1; i <= 1; ++i) painter.drawEllipse(QPointF(width() / 2.0, height() / 2.0 + 8 * i), 1.7, 1.7);
}

}  // namespace underlawn
