// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/marks.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <array>

#include "tools/gesture_paint.h"

namespace underlawn {

namespace {

QStringList measured(Point along, const Plan& plan) {
  if (norm(along) < kSamePlace) return {};
  double degrees = std::atan2(along.y, along.x) * 180 / M_PI;
  if (degrees < -0.005) degrees += 360;
  const std::string length = print_quantity(Quantity::length, norm(along), plan.units, Fineness::fine);
  return {QStringLiteral("%1  <%2°").arg(QString::fromStdString(length)).arg(degrees, 0, 'f', 1),
          bearing_text(along, plan.site.north)};
}

// Lines of at most about `most` letters, broken at blanks.
QStringList wrapped(const QString& text, int most) {
  QStringList lines(QString{});
  for (const QString& word : text.split(QLatin1Char(' '))) {
    if (!lines.back().isEmpty() && lines.back().size() + word.size() >= most) lines << QString();
    lines.back() += (lines.back().isEmpty() ? "" : " ") + word;
  }
  return lines;
}

// The box a typed text stands in; its own bright frame tells it from the readout.
void paint_typed(const ToolPaint& p, QPointF at, const TypedEntry& typed) {
  const QFont font = plan_font(p.look.text_size + 3, QFont::DemiBold);
  const QFontMetricsF metrics(font);
  const double wide = std::max(90.0, metrics.horizontalAdvance(typed.text()) + 22);
  QRectF box(at, QSizeF(wide, metrics.height() + 10));
  box.moveLeft(std::clamp(box.left(), 2.0, std::max(2.0, p.view.size.width() - wide - 2)));
  box.moveTop(std::clamp(box.top(), 2.0, std::max(2.0, p.view.size.height() - box.height() - 30)));
  p.painter.setPen(QPen(typed.trouble().isEmpty() ? p.look.selection : p.look.error, 2));
  p.painter.setBrush(p.look.ground);
  p.painter.drawRoundedRect(box, 3, 3);
  p.painter.setFont(font);
  p.painter.setPen(p.look.text);
  p.painter.drawText(box.adjusted(8, 0, -8, 0), Qt::AlignLeft | Qt::AlignVCenter, typed.text());
  const double caret = box.left() + 9 + metrics.horizontalAdvance(typed.text());
  p.painter.setPen(QPen(p.look.selection, 1.5));
  p.painter.drawLine(QPointF(caret, box.top() + 6), QPointF(caret, box.bottom() - 6));
  if (typed.trouble().isEmpty()) return;
  const QStringList lines = wrapped(typed.trouble(), 52);
  const double tall =
      10 + QFontMetricsF(plan_font(p.look.text_size + 1)).height() * static_cast<double>(lines.size());
  paint_plate(p, {box.left(), box.bottom() + 4 + tall}, lines, p.look.error);
}

double round_length(double most, UnitSystem units) {
  constexpr double kFoot = 0.3048;
  const double unit = units == UnitSystem::us ? kFoot : 1.0;
  double best = 0.1 * unit;
  for (double decade = 0.1; decade < 1e5; decade *= 10)
    for (double step : {1.0, 2.0, 5.0})
      if (decade * step * unit <= most) best = decade * step * unit;
  return best;
}

}  // namespace

void paint_readout(const ToolPaint& p, const TypedEntry& typed, std::optional<Point> from, const Plan& plan) {
  const QPointF at = p.view.to_device(p.pointer.at);
  p.painter.save();
  if (typed.begun())
    paint_typed(p, at + QPointF(16, 14), typed);
  else if (from)
    if (const QStringList lines = measured(p.pointer.at - *from, plan); !lines.isEmpty())
      paint_plate(p, at + QPointF(16, 60), lines, p.look.text);
  p.painter.restore();
}

void paint_key_cursor(const ToolPaint& p, Point at) {
  const QPointF c = p.view.to_device(at);
  p.painter.save();
  for (const QPen& pen : {QPen(p.look.ground, 4), QPen(p.look.selection, 1.6)}) {
    p.painter.setPen(pen);
    p.painter.drawLine(c - QPointF(13, 0), c + QPointF(13, 0));
    p.painter.drawLine(c - QPointF(0, 13), c + QPointF(0, 13));
  }
  p.painter.restore();
}

void paint_scale_bar(const ToolPaint& p, UnitSystem units) {
  constexpr double kWidest = 150;
  const double metres = round_length(kWidest / p.view.scale, units);
  const double wide = p.view.to_device(metres);
  const QPointF left(16, p.view.size.height() - 18);
  p.painter.save();
  for (const QPen& pen : {QPen(p.look.background, 4), QPen(p.look.text, 1.4)}) {
    p.painter.setPen(pen);
    p.painter.drawPolyline(
        QPolygonF{left - QPointF(0, 5), left, left + QPointF(wide, 0), left + QPointF(wide, -5)});
  }
  p.painter.setFont(plan_font(p.look.text_size));
  p.painter.setPen(p.look.text);
  const std::string text = print_quantity(Quantity::length, metres, units, Fineness::normal);
  p.painter.drawText(left + QPointF(5, -5), QString::fromStdString(text));
  p.painter.restore();
}

void paint_north(const ToolPaint& p, double north) {
  const QPointF c(p.view.size.width() - 30, 34);
  p.painter.save();
  p.painter.translate(c);
  p.painter.rotate(90 - (north + p.view.turn) * 180 / M_PI);
  p.painter.setPen(QPen(p.look.text, 1.2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  p.painter.setBrush(p.look.text);
  p.painter.drawPolygon(QPolygonF{{0, -14}, {5, 8}, {0, 4}});
  p.painter.setBrush(p.look.ground);
  p.painter.drawPolygon(QPolygonF{{0, -14}, {-5, 8}, {0, 4}});
  p.painter.setFont(plan_font(p.look.text_size, QFont::DemiBold));
  p.painter.drawText(QRectF(-12, 8, 24, 16), Qt::AlignCenter, QObject::tr("N"));
  p.painter.restore();
}

void paint_welcome(const ToolPaint& p) {
  p.painter.save();
  const QRectF room = QRectF(QPointF(), p.view.size).adjusted(20, 20, -20, -60);
  p.painter.setPen(p.look.text);
  p.painter.setFont(plan_font(p.look.text_size + 9, QFont::DemiBold));
  p.painter.drawText(room.adjusted(0, 0, 0, -40), Qt::AlignCenter, QObject::tr("An empty lot"));
  p.painter.setPen(p.look.faint_text);
  p.painter.setFont(plan_font(p.look.text_size + 3));
  p.painter.drawText(
      room.adjusted(0, 40, 0, 0), Qt::AlignCenter,
      QObject::tr("Press L and draw the lot line: click its corners,\nor type 0,0 Enter, then courses like "
                  "120 N45E Enter."));
  p.painter.restore();
}

}  // namespace underlawn
