// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/paint_context.h"

#include <algorithm>
#include <cmath>

namespace underlawn {

namespace {

constexpr double kFarthest = 1e6;  // device units: Qt's rasterizer loses its way beyond

}  // namespace

QPointF PaintContext::at(Point p) const {
  const QPointF d = view.to_device(p);
  return {std::clamp(d.x(), -kFarthest, kFarthest), std::clamp(d.y(), -kFarthest, kFarthest)};
}

QPolygonF PaintContext::line(const std::vector<Point>& points) const {
  QPolygonF device;
  for (Point p : points)
    if (std::isfinite(p.x) && std::isfinite(p.y)) device.push_back(at(p));
  return device;
}

QPen PaintContext::pen(const QColor& colour, double weight, Qt::PenStyle style) const {
  return {colour, weight * look.line, style, Qt::FlatCap, Qt::MiterJoin};
}

QPen PaintContext::dashed(const QColor& colour, double weight, const QVector<qreal>& pattern) const {
  QPen p = pen(colour, weight);
  // Qt counts dashes in pen widths; here they are in normal lines.
  QVector<qreal> in_widths;
  for (qreal dash : pattern) in_widths.push_back(dash / weight);
  p.setDashPattern(in_widths);
  return p;
}

QFont PaintContext::font(double times, QFont::Weight weight) const {
  return plan_font(times * look.text_size, weight);
}

void PaintContext::hatch(const QVector<QPolygonF>& all, double spacing, double angle,
                         const QPen& with) const {
  painter.setPen(with);
  painter.drawLines(hatch_lines(all, {spacing * look.line, angle, at({0, 0})}, device()));
}

QVector<QPolygonF> PaintContext::rings(const Region& region) const {
  QVector<QPolygonF> all;
  for (const Polygon& polygon : region) {
    all.push_back(line(polygon.outer));
    for (const Ring& hole : polygon.holes) all.push_back(line(hole));
  }
  return all;
}

QPainterPath PaintContext::path(const Region& region) const {
  QPainterPath whole;
  for (const QPolygonF& ring : rings(region)) {
    whole.addPolygon(ring);
    whole.closeSubpath();
  }
  return whole;
}

QPolygonF beside(const QPolygonF& line, double by) {
  QPolygonF points;
  for (const QPointF& p : line)
    if (points.isEmpty() || QLineF(points.back(), p).length() > 1e-6) points.push_back(p);
  if (points.size() < 2) return points;
  const auto normal = [&](int i) {
    const QPointF d = points[i + 1] - points[i];
    return QPointF(-d.y(), d.x()) / std::hypot(d.x(), d.y());
  };
  QPolygonF moved;
  const int last = static_cast<int>(points.size()) - 1;
  for (int i = 0; i <= last; ++i) {
    const QPointF before = normal(std::max(0, i - 1)), after = normal(std::min(i, last - 1));
    const double share = 1 + QPointF::dotProduct(before, after);
    // A hairpin would throw the mitre far off.
    moved.push_back(points[i] + (share > 0.3 ? by / share * (before + after) : by * after));
  }
  return moved;
}

void label_area(PaintContext& c, const QPolygonF& area, const QString& text, const QColor& colour, int rank) {
  if (!c.options.labels || area.size() < 3) return;
  // Only what is in sight is named, and there.
  const QRectF box = area.boundingRect() & c.device();
  if (box.isEmpty()) return;
  Label label;
  label.text = text;
  label.font = c.font();
  label.colour = colour;
  label.rank = rank;
  const QSizeF size = text_size(text, label.font);
  const QPointF middle = box.center();
  if (size.width() < 0.92 * box.width() && size.height() < box.height())
    for (double y : {0.0, -0.22, 0.22, -0.38, 0.38}) {
      const QPointF p(middle.x(), middle.y() + y * box.height());
      if (area.containsPoint(p, Qt::OddEvenFill)) label.places.push_back(p);
    }
  if (label.places.isEmpty() && size.height() < 0.9 * box.width() && size.width() < 0.92 * box.height()) {
    label.angle = -90;
    const QPointF spare(0, (box.height() - size.width()) / 2);
    label.places = {middle, middle - spare, middle + spare};
  } else {
    label.places += places_around(middle, box.size() / 2, text, label.font, 4);
    // Of a high thing beside it all along, before places over and under it that may be another's.
    if (box.height() > 3 * size.height())
      for (double y : {-0.38, 0.38, -0.2, 0.2})
        for (double side : {-1.0, 1.0})
          label.places.insert(
              std::min<qsizetype>(1, label.places.size()),
              middle + QPointF(side * (box.width() + size.width() + size.height()) / 2, y * box.height()));
  }
  label.anchor = middle;
  label.thing = box;
  label.leader = true;
  label.leader_from = 0.9 * label.font.pixelSize();
  c.labels.add(std::move(label));
}

}  // namespace underlawn
