// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "canvas/marks.h"
#include "plane/region.h"
#include "tools/gesture_paint.h"

namespace underlawn {

namespace {

constexpr double kHalf = 6.5;  // px

QPolygonF around(QPointF c, std::initializer_list<QPointF> offsets) {
  QPolygonF shape;
  for (QPointF o : offsets) shape << c + kHalf * o;
  return shape;
}

// One shape for each kind, told apart without colour.
void paint_shape(QPainter& painter, SnapKind kind, QPointF c) {
  switch (kind) {
    case SnapKind::end:
      painter.drawPolygon(around(c, {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}));
      break;
    case SnapKind::middle:
      painter.drawPolygon(around(c, {{-1.1, 0.9}, {1.1, 0.9}, {0, -1.1}}));
      break;
    case SnapKind::house_corner:
      painter.drawPolygon(around(c, {{-1, 1}, {1, 1}, {1, -0.2}, {0, -1.2}, {-1, -0.2}}));
      break;
    case SnapKind::foot:
      painter.drawPolyline(around(c, {{-1, -1}, {-1, 1}, {1, 1}}));
      painter.drawPolyline(around(c, {{-1, 0}, {0, 0}, {0, 1}}));
      break;
    case SnapKind::edge:
      painter.drawPolygon(around(c, {{-1, -1}, {1, -1}, {-1, 1}, {1, 1}}));
      break;
    case SnapKind::parallel:
      painter.drawLine(c + QPointF(-kHalf, kHalf), c + QPointF(0, -kHalf));
      painter.drawLine(c + QPointF(0, kHalf), c + QPointF(kHalf, -kHalf));
      break;
    case SnapKind::square:
      painter.drawPolyline(around(c, {{0, -1}, {0, 1}}));
      painter.drawPolyline(around(c, {{-1, 1}, {1, 1}}));
      break;
    case SnapKind::extension:
      for (double x : {-1.0, 0.0, 1.0}) painter.drawEllipse(c + QPointF(x * kHalf, 0), 1.4, 1.4);
      break;
  }
}

void paint_guides(const ToolPaint& p, const Snap& snap, std::optional<Point> from, QPointF at) {
  if (!snap.edge) return;
  const QPointF a = p.view.to_device(snap.edge->a), b = p.view.to_device(snap.edge->b);
  QColor faint = p.look.snap;
  faint.setAlphaF(0.55F);
  const bool direction = snap.kind == SnapKind::parallel || snap.kind == SnapKind::square;
  if (direction || snap.kind == SnapKind::foot) {
    p.painter.setPen(QPen(faint, 2.5));
    p.painter.drawLine(a, b);
  }
  p.painter.setPen(QPen(faint, 1, Qt::DashLine));
  if (snap.kind == SnapKind::extension) {
    const bool behind_b = distance(snap.at, snap.edge->b) < distance(snap.at, snap.edge->a);
    p.painter.drawLine(behind_b ? b : a, at);
  } else if (direction && from) {
    const QPointF start = p.view.to_device(*from);
    p.painter.drawLine(start, at + (at - start) * 0.25);
  }
}

}  // namespace

void paint_snap(const ToolPaint& p, const Snap& snap, std::optional<Point> from) {
  const QPointF at = p.view.to_device(snap.at);
  p.painter.save();
  paint_guides(p, snap, from, at);
  p.painter.setBrush(Qt::NoBrush);
  // A halo in the ground's colour keeps the mark readable on lines of any colour.
  for (const QPen& pen : {QPen(p.look.ground, 4.5), QPen(p.look.snap, 2)}) {
    p.painter.setPen(pen);
    paint_shape(p.painter, snap.kind, at);
  }
  paint_plate(p, at + QPointF(12, -10), {snap_name(snap.kind)}, p.look.snap);
  p.painter.restore();
}

}  // namespace underlawn
