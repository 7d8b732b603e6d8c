// SPDX-License-Identifier: GPL-3.0-or-later
// A list of signs, each drawn with the very strokes of the drawing on a lot of its own a few metres wide, and
// what they mean.
#pragma once

#include <functional>
#include <vector>

#include "canvas/paint_context.h"
#include "sheets/sheet_type.h"

namespace underlawn::sheet {

struct Sign {
  QString text;
  std::function<void(PaintContext&)> paint;  // on 34 m by 10 m, a point a metre
};

// What is painted of a plan and an outcome of its own.
struct Miniature {
  Plan plan;
  Outcome outcome;
};
Sign sign_of(const QString& text, std::function<void(Miniature&)> fill, void (*paint)(PaintContext&));

// In as many columns as have room; height needed in a width, and painting.
double signs_height(const std::vector<Sign>& signs, double width);
void paint_signs(QPainter& painter, const QRectF& room, const std::vector<Sign>& signs,
                 const PaintOptions& options);

}  // namespace underlawn::sheet
