// SPDX-License-Identifier: GPL-3.0-or-later
// Hatching as real lines, so that it is the same on every device and stays a vector on paper.
#pragma once

#include <QLineF>
#include <QPolygonF>
#include <QRectF>
#include <QVector>

namespace underlawn {

struct Hatch {
  double spacing = 6;  // device units between lines
  double angle = 45;   // degrees, counter-clockwise from the right
  QPointF origin;      // a line passes through it: hatching moves with the drawing, not over it
};

// The stretches of the hatch lines that lie inside the rings (even-odd: a ring within a ring is a hole), and
// inside `room`'s height and width about it. Rings with fewer than three points are left out.
QVector<QLineF> hatch_lines(const QVector<QPolygonF>& rings, const Hatch& hatch, const QRectF& room);

}  // namespace underlawn
