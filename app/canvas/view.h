// SPDX-License-Identifier: GPL-3.0-or-later
// How the lot lies on a screen or a page: metres to device units, y turned over.
#pragma once

#include <QPointF>
#include <QSizeF>

#include "plane/point.h"

namespace underlawn {

struct View {
  Point centre;           // m, the lot point in the middle of the device
  double scale = 10;      // device units per metre
  QSizeF size{800, 600};  // device units
  double turn = 0;        // rad, counter-clockwise, of the lot on the device

  QPointF to_device(Point p) const;
  Point to_lot(QPointF d) const;
  double to_device(double metres) const { return metres * scale; }
};

// The view that shows the whole box with a margin (device units) on every side.
View fit_view(const Box& box, QSizeF size, double margin, double turn = 0);

}  // namespace underlawn
