// SPDX-License-Identifier: GPL-3.0-or-later
// What a painter writes, in the order in which it is written, without a picture being made.
#pragma once

#include <QPainter>
#include <QPolygonF>
#include <QStringList>
#include <functional>
#include <vector>

namespace underlawn::test {

struct Written {
  QString text;
  QPolygonF ink;  // round its letters, in the coordinates that the painter begins with
  QRectF seen;    // the clip there, empty where there is none
};

std::vector<Written> all_written_by(const std::function<void(QPainter&)>& paint, QSize size = {4000, 4000});
// The texts alone.
QStringList written_by(const std::function<void(QPainter&)>& paint, QSize size = {4000, 4000});

// How deep the letters of two texts lie in each other, in the page's units; 0 where they do not.
double overlap(const Written& a, const Written& b);

}  // namespace underlawn::test
