// SPDX-License-Identifier: GPL-3.0-or-later
// The halo that a text stands on: an outline of its letters as wide as a pen. On a screen the same text at
// the same place of a pixel has the same halo, so it is kept as an image; on paper it stays a line.
#pragma once

#include <QColor>
#include <QFont>
#include <QPointF>
#include <QString>

class QPainter;

namespace underlawn {

struct Halo {
  QString text;
  QFont font;
  QPointF base;  // where the text begins, in the painter's own units
  QColor colour;
  double width = 0;  // on each side of the letters
};

void paint_halo(QPainter& painter, const Halo& halo);

// The same without anything kept.
void stroke_halo(QPainter& painter, const Halo& halo);

}  // namespace underlawn
