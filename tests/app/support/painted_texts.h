// SPDX-License-Identifier: GPL-3.0-or-later
// Every piece of lettering of a page where it is painted, caught by a paint device that draws nothing.
#pragma once

#include <QPolygonF>
#include <QRectF>
#include <QString>
#include <QVector>

class QPainter;

namespace underlawn {

class Sheet;

namespace painted {

struct Text {
  QString text;
  QPolygonF ink;         // the four corners round its strokes, sheet units
  double points = 0;     // its letters' size on the page
  QRectF room;           // what may be painted on: the page, less what is clipped
  bool covered = false;  // something opaque was painted over it afterwards
};

QVector<Text> texts(const Sheet& sheet, int page);

// How far one would have to be moved to clear the other; 0 where they do not meet. Both convex.
double overlap(const QPolygonF& a, const QPolygonF& b);

}  // namespace painted
}  // namespace underlawn
