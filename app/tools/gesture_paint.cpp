// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/gesture_paint.h"

#include <QFontMetricsF>

namespace underlawn {

void paint_drawn(const ToolPaint& p, const Polyline& drawn, std::optional<Point> next, bool closes) {
  if (drawn.empty()) return;
  QPolygonF line;
  for (Point point : drawn) line << p.view.to_device(point);
  const QPolygonF fixed = line;
  if (next) line << p.view.to_device(*next);
  p.painter.save();
  p.painter.setBrush(Qt::NoBrush);
  p.painter.setPen(QPen(p.look.selection, 1.8, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  p.painter.drawPolyline(line);
  if (closes && line.size() > 2) {
    p.painter.setPen(QPen(p.look.selection, 1, Qt::DashLine));
    p.painter.drawLine(line.back(), line.front());
  }
  p.painter.setPen(QPen(p.look.ground, 1.2));
  p.painter.setBrush(p.look.selection);
  for (QPointF point : fixed) p.painter.drawEllipse(point, 3.6, 3.6);
  p.painter.restore();
}

void paint_plate(const ToolPaint& p, QPointF at, const QStringList& lines, const QColor& text) {
  constexpr double kPad = 5;
  const QFont font = plan_font(p.look.text_size + 1);
  const QFontMetricsF metrics(font);
  double width = 0;
  for (const QString& line : lines) width = std::max(width, metrics.horizontalAdvance(line));
  const double height = metrics.height() * static_cast<double>(lines.size());
  QRectF box(at.x(), at.y() - height - 2 * kPad, width + 2 * kPad, height + 2 * kPad);
  const QSizeF room = p.view.size;
  box.moveLeft(std::clamp(box.left(), 2.0, std::max(2.0, room.width() - box.width() - 2)));
  box.moveTop(std::clamp(box.top(), 2.0, std::max(2.0, room.height() - box.height() - 2)));
  QColor plate = p.look.ground;
  plate.setAlphaF(0.92F);
  p.painter.save();
  p.painter.setPen(QPen(p.look.setback, 1));
  p.painter.setBrush(plate);
  p.painter.drawRoundedRect(box, 3, 3);
  p.painter.setFont(font);
  p.painter.setPen(text);
  p.painter.drawText(box.adjusted(kPad, kPad, kPad, kPad), Qt::AlignLeft | Qt::AlignTop, lines.join('\n'));
  p.painter.restore();
}

void paint_grip(const ToolPaint& p, Point at, bool round, bool picked) {
  const double size = round ? kGripSize - 1 : kGripSize;
  QRectF box(0, 0, size, size);
  box.moveCenter(p.view.to_device(at));
  p.painter.save();
  p.painter.setPen(QPen(p.look.selection, 1.6));
  p.painter.setBrush(picked ? p.look.selection : p.look.ground);
  if (round)
    p.painter.drawEllipse(box);
  else
    p.painter.drawRect(box);
  p.painter.restore();
}

}  // namespace underlawn
