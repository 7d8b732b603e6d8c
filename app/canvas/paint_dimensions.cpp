// SPDX-License-Identifier: GPL-3.0-or-later
// Dimensions: a line with a stroke at each end, fine lines to what is measured, and the length along it.
#include <cmath>

#include "canvas/paint_context.h"
#include "plan/dimensions.h"

namespace underlawn {

namespace {

// From a little off the measured place to a little beyond the dimension's line.
void paint_witness(PaintContext& c, QPointF place, QPointF end) {
  QLineF line(place, end);
  if (line.length() < 4 * c.look.line) return;
  const double gap = 3 * c.look.line, beyond = 4 * c.look.line, length = line.length();
  c.painter.drawLine(line.pointAt(gap / length), line.pointAt(1 + beyond / length));
}

void paint_tick(PaintContext& c, QPointF at, const QLineF& line) {
  const QPointF along = (line.p2() - line.p1()) / line.length();
  const QPointF across(-along.y(), along.x());
  const QPointF half = 3.6 * c.look.line * (along - across);
  c.painter.drawLine(at - half, at + half);
}

void label_dimension(PaintContext& c, const QLineF& line, const Dimension& d) {
  Label label;
  label.text = QString::fromStdString(print_quantity(Quantity::length, measured(d), c.plan.units));
  if (!d.text.empty()) label.text += "  " + QString::fromStdString(d.text);
  label.font = c.font(1, QFont::Medium);
  label.colour = c.look.dimension;
  label.angle = -line.angle();
  if (std::cos(label.angle * M_PI / 180) < -1e-9) label.angle += 180;
  label.rank = 1;
  label.must = true;
  const QPointF out = QPointF(line.dy(), -line.dx()) / line.length();
  const double off = 0.75 * label.font.pixelSize() + c.look.line;
  // Above the line as it is read, then below; farther off where it is longer than its line.
  const double up = out.y() < 0 || (out.y() == 0 && out.x() < 0) ? 1 : -1;
  for (double side : {up, -up})
    for (double along : {0.5, 0.35, 0.65, 0.2, 0.8})
      label.places.push_back(line.pointAt(along) + side * off * out);
  c.labels.add(std::move(label));
}

}  // namespace

void paint_dimensions(PaintContext& c) {
  for (const Dimension& d : c.plan.dimensions) {
    const auto segment = line_of(d);
    if (!segment || !std::isfinite(segment->a.x + segment->a.y + segment->b.x + segment->b.y)) continue;
    const QLineF line(c.at(segment->a), c.at(segment->b));
    if (line.length() < 1) continue;
    c.painter.setPen(c.pen(c.look.dimension, 0.7));
    paint_witness(c, c.at(d.from), line.p1());
    paint_witness(c, c.at(d.to), line.p2());
    c.painter.setPen(c.pen(c.look.dimension, 0.9));
    c.painter.drawLine(line);
    c.painter.setPen(c.pen(c.look.dimension, 1.8));
    paint_tick(c, line.p1(), line);
    paint_tick(c, line.p2(), line);
    c.labels.avoid(QPolygonF({line.p1(), line.p2()}));
    label_dimension(c, line, d);
  }
}

}  // namespace underlawn
