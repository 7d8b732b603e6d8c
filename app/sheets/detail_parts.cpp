// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/detail_parts.h"

#include <array>
#include <cmath>

namespace underlawn::sheet {

void dimension(QPainter& painter, QPointF a, QPointF b, const QString& text, QPointF label, Align align) {
  painter.setPen(rule(0.6));
  painter.drawLine(a, b);
  const QPointF along = (b - a) / std::hypot(b.x() - a.x(), b.y() - a.y());
  const QPointF tick = pt(2.6) * QPointF(along.x() + along.y(), along.y() - along.x());
  painter.setPen(rule(1.1));
  for (QPointF p : {a, b}) painter.drawLine(p - tick, p + tick);
  write(painter, label, text, type(10.5, QFont::DemiBold), kInk, align);
}

void named(QPainter& painter, QPointF what, QPointF word, const QString& text, Align align) {
  painter.setPen(rule(0.5, kFaint));
  const double gap = align == Align::right ? pt(2) : -pt(2);
  painter.drawLine(what, word + QPointF(gap, 0));
  write(painter, word + QPointF(0, pt(3)), text, type(9), kInk, align);
}

void ground_line(QPainter& painter, double from, double to, double y) {
  painter.setPen(rule(1.4));
  painter.drawLine(QPointF(from, y), QPointF(to, y));
  painter.setPen(rule(0.5));
  for (double x = from + pt(5); x < to; x += pt(6))
    painter.drawLine(QPointF(x, y), QPointF(x - pt(4), y + pt(5)));
}

int detail_scale(UnitSystem units, double metres, double room) {
  static constexpr std::array kUs{12, 16, 24, 32, 48, 64, 96, 128, 192, 240, 384, 480, 720, 960, 1440};
  static constexpr std::array kMetric{10, 20, 25, 50, 75, 100, 150, 200, 250, 300, 400, 500, 750, 1000, 1500};
  const auto& scales = units == UnitSystem::us ? kUs : kMetric;
  for (const int scale : scales)
    if (metres * per_metre(scale) <= room) return scale;
  return scales.back();
}

QString detail_scale_text(int scale, UnitSystem units) {
  // Inches of paper to the foot, as on an architect's rule; feet to the inch, as on an engineer's, where that
  // ends.
  static constexpr std::pair<int, const char*> kArchitects[] = {
      {12, "1"},    {16, "3/4"}, {24, "1/2"},   {32, "3/8"},   {48, "1/4"},
      {64, "3/16"}, {96, "1/8"}, {128, "3/32"}, {192, "1/16"}, {384, "1/32"}};
  const QString ratio = QString("1:%1").arg(scale);
  if (units == UnitSystem::us)
    for (const auto& [one, inches] : kArchitects)
      if (one == scale) return QString("%1\" = 1'-0\" (%2)").arg(inches, ratio);
  if (units == UnitSystem::us && scale >= 240 && scale % 120 == 0)
    return QString("1\" = %1' (%2)").arg(scale / 12).arg(ratio);
  return ratio;
}

}  // namespace underlawn::sheet
