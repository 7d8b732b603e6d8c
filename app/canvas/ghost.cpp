// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/ghost.h"

#include <QPainter>

namespace underlawn {

namespace {

constexpr double kMargin = 12, kSwatch = 26, kPad = 9;

QPolygonF on_device(const std::vector<Point>& points, const View& view) {
  QPolygonF line;
  for (Point p : points) line << view.to_device(p);
  return line;
}

QPen dashed(const QColor& colour, double width) {
  QPen pen(colour, width, Qt::CustomDashLine, Qt::FlatCap, Qt::MiterJoin);
  pen.setDashPattern({4, 2});
  return pen;
}

// Light beneath, so that it shows on soil and lawn alike.
template <class Draw>
void twice(QPainter& painter, const Look& look, const Draw& draw) {
  QColor halo = look.ground;
  halo.setAlpha(200);
  painter.setPen(QPen(halo, 4));
  draw();
  painter.setPen(dashed(look.ghost, 2));
  draw();
}

void paint_legend(QPainter& painter, const Ghost& ghost, const View& view, const Look& look) {
  const QFont font = plan_font(look.text_size);
  const QFontMetricsF metrics(font);
  const double most = std::max(80.0, view.size.width() - 2 * kMargin - 3 * kPad - kSwatch - 60);
  const QString now = ghost.now.isEmpty() ? QObject::tr("As it stands") : ghost.now;
  const QString other = metrics.elidedText(ghost.name, Qt::ElideRight, most);
  const double row = metrics.height() + 4;
  const double wide = std::max(metrics.horizontalAdvance(now), metrics.horizontalAdvance(other));
  const QRectF box(kMargin, kMargin, wide + kSwatch + 3 * kPad, 2 * row + 2 * kPad);
  painter.setPen(QPen(look.setback, 1));
  painter.setBrush(look.ground);
  painter.drawRoundedRect(box, 6, 6);
  painter.setFont(font);
  for (int i = 0; i < 2; ++i) {
    const double y = box.top() + kPad + (i + 0.5) * row;
    const QRectF swatch(box.left() + kPad, y - 4, kSwatch, 8);
    painter.setPen(i == 0 ? QPen(look.trench, 1.4) : dashed(look.ghost, 2));
    painter.setBrush(i == 0 ? QBrush(look.trench_fill) : QBrush(Qt::NoBrush));
    painter.drawRect(swatch);
    painter.setPen(look.text);
    painter.drawText(QRectF(swatch.right() + kPad, y - row / 2, wide + 2, row),
                     Qt::AlignVCenter | Qt::AlignLeft, i == 0 ? now : other);
  }
}

}  // namespace

void paint_ghost(QPainter& painter, const Ghost& ghost, const View& view, const Look& look) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setBrush(Qt::NoBrush);
  std::vector<Polyline> lines = ghost.layout.header.legs;
  lines.push_back(ghost.layout.run.line);
  for (const Polyline& line : lines)
    twice(painter, look, [&] { painter.drawPolyline(on_device(line, view)); });
  QColor tint = look.ghost;
  tint.setAlpha(36);
  painter.setBrush(tint);
  for (const Trench& t : ghost.layout.trenches) {
    const QPolygonF outline = on_device(floor_of(t), view);
    twice(painter, look, [&] { painter.drawPolygon(outline); });
  }
  paint_legend(painter, ghost, view, look);
  painter.restore();
}

}  // namespace underlawn
