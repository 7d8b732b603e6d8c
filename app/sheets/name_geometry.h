// SPDX-License-Identifier: GPL-3.0-or-later
// Outlines, boxes and lines of a picture, for placing names on it.
#pragma once

#include <QLineF>
#include <QPolygonF>
#include <QRectF>

namespace underlawn {

bool meet(const QLineF& line, const QPolygonF& outline);  // crosses it or begins inside
bool meet(const QRectF& box, const QPolygonF& outline);
bool holds(const QPolygonF& outline, const QRectF& box);  // the whole box
// Of a grid over it the point farthest from its edge.
QPointF heart_of(const QPolygonF& outline);
QPolygonF round_at(QPointF middle, double r);

}  // namespace underlawn
