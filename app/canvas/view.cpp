// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/view.h"

#include <algorithm>

namespace underlawn {

QPointF View::to_device(Point p) const {
  const Point d = rotated(p - centre, turn);
  return {size.width() / 2 + scale * d.x, size.height() / 2 - scale * d.y};
}

Point View::to_lot(QPointF d) const {
  const Point q{(d.x() - size.width() / 2) / scale, (size.height() / 2 - d.y()) / scale};
  return centre + rotated(q, -turn);
}

View fit_view(const Box& box, QSizeF size, double margin, double turn) {
  View view;
  view.size = size;
  view.turn = turn;
  view.centre = 0.5 * (box.low + box.high);
  Point low{0, 0}, high{0, 0};
  for (Point corner : {box.low, Point{box.high.x, box.low.y}, box.high, Point{box.low.x, box.high.y}}) {
    const Point d = rotated(corner - view.centre, turn);
    low = {std::min(low.x, d.x), std::min(low.y, d.y)};
    high = {std::max(high.x, d.x), std::max(high.y, d.y)};
  }
  const double width = std::max(high.x - low.x, 1.0), height = std::max(high.y - low.y, 1.0);
  const double room_x = std::max(size.width() - 2 * margin, 10.0),
               room_y = std::max(size.height() - 2 * margin, 10.0);
  view.scale = std::min(room_x / width, room_y / height);
  return view;
}

}  // namespace underlawn
