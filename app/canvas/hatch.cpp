// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/hatch.h"

#include <QTransform>
#include <algorithm>
#include <cmath>

namespace underlawn {

namespace {

constexpr int kMostLines = 4000;

// x of every edge that the level line meets, from left to right.
QVector<double> crossings_at(const QVector<QPolygonF>& rings, double y) {
  QVector<double> xs;
  for (const QPolygonF& ring : rings)
    for (int i = 0; i < ring.size(); ++i) {
      const QPointF a = ring[i], b = ring[(i + 1) % ring.size()];
      if ((a.y() <= y) == (b.y() <= y)) continue;
      xs.push_back(a.x() + (y - a.y()) / (b.y() - a.y()) * (b.x() - a.x()));
    }
  std::sort(xs.begin(), xs.end());
  return xs;
}

QVector<QPolygonF> turned(const QVector<QPolygonF>& rings, const QTransform& to_level, QRectF& bounds) {
  QVector<QPolygonF> all;
  for (const QPolygonF& ring : rings) {
    if (ring.size() < 3) continue;
    all.push_back(to_level.map(ring));
    bounds = bounds.united(all.back().boundingRect());
  }
  return all;
}

}  // namespace

QVector<QLineF> hatch_lines(const QVector<QPolygonF>& rings, const Hatch& hatch, const QRectF& room) {
  QTransform from_level;
  from_level.translate(hatch.origin.x(), hatch.origin.y());
  from_level.rotate(-hatch.angle);
  const QTransform to_level = from_level.inverted();
  QRectF bounds;
  const QVector<QPolygonF> level = turned(rings, to_level, bounds);
  bounds = bounds.intersected(to_level.mapRect(room));
  QVector<QLineF> lines;
  if (level.isEmpty() || bounds.isEmpty() || !(hatch.spacing > 0)) return lines;
  if (bounds.height() / hatch.spacing > kMostLines) return lines;
  for (double n = std::ceil(bounds.top() / hatch.spacing); n * hatch.spacing <= bounds.bottom(); ++n) {
    const double y = n * hatch.spacing;
    const QVector<double> xs = crossings_at(level, y);
    for (int i = 0; i + 1 < xs.size(); i += 2) {
      const double left = std::max(xs[i], bounds.left()), right = std::min(xs[i + 1], bounds.right());
      if (left < right) lines.push_back(from_level.map(QLineF(left, y, right, y)));
    }
  }
  return lines;
}

}  // namespace underlawn
