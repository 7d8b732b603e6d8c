// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/name_geometry.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "plane/region.h"

namespace underlawn {

bool meet(const QLineF& line, const QPolygonF& outline) {
  for (qsizetype i = 0; i < outline.size(); ++i)
    if (line.intersects(QLineF(outline[i], outline[(i + 1) % outline.size()]), nullptr) ==
        QLineF::BoundedIntersection)
      return true;
  return outline.containsPoint(line.p1(), Qt::OddEvenFill);
}

bool meet(const QRectF& box, const QPolygonF& outline) {
  const std::array corners{box.topLeft(), box.topRight(), box.bottomRight(), box.bottomLeft()};
  for (std::size_t i = 0; i < corners.size(); ++i)
    if (meet(QLineF(corners[i], corners[(i + 1) % 4]), outline)) return true;
  return std::ranges::any_of(outline, [&](const QPointF& p) { return box.contains(p); });
}

bool holds(const QPolygonF& outline, const QRectF& box) {
  const std::array corners{box.topLeft(), box.topRight(), box.bottomRight(), box.bottomLeft()};
  for (std::size_t i = 0; i < corners.size(); ++i) {
    if (!outline.containsPoint(corners[i], Qt::OddEvenFill)) return false;
    const QLineF side(corners[i], corners[(i + 1) % 4]);
    for (qsizetype k = 0; k < outline.size(); ++k)
      if (side.intersects(QLineF(outline[k], outline[(k + 1) % outline.size()]), nullptr) ==
          QLineF::BoundedIntersection)
        return false;
  }
  return true;
}

QPointF heart_of(const QPolygonF& outline) {
  const QRectF box = outline.boundingRect();
  QPointF best = box.center();
  double most = -1;
  for (int i = 1; i < 16; ++i)
    for (int k = 1; k < 16; ++k) {
      const QPointF p = box.topLeft() + QPointF(i * box.width() / 16, k * box.height() / 16);
      if (!outline.containsPoint(p, Qt::OddEvenFill)) continue;
      double least = 1e9;
      for (qsizetype e = 0; e < outline.size(); ++e) {
        const QPointF a = outline[e], b = outline[(e + 1) % outline.size()];
        least = std::min(least, distance(Segment{{a.x(), a.y()}, {b.x(), b.y()}}, Point{p.x(), p.y()}));
      }
      // A trace nearer to the middle wins among equals.
      least -= 1e-3 * QLineF(p, box.center()).length();
      if (least > most) most = least, best = p;
    }
  return best;
}

QPolygonF round_at(QPointF middle, double r) {
  QPolygonF all;
  for (int i = 0; i < 24; ++i) all << middle + r * QPointF(std::cos(i * M_PI / 12), std::sin(i * M_PI / 12));
  return all;
}

}  // namespace underlawn
