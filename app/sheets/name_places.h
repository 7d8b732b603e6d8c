// SPDX-License-Identifier: GPL-3.0-or-later
// Where names and trenches' numbers stand on a picture of the lot, and how it is seen between its columns of
// names.
#pragma once

#include "canvas/view.h"
#include "sheets/lot_names.h"

namespace underlawn {

struct NumberPlace {
  QString text;
  QRectF box;
};

struct LaidNames {
  double left = 0, right = 0;  // columns kept free for names
  View view;                   // between them
  QRectF lot;                  // its bounds
  std::vector<NamePlace> names;
  std::vector<NumberPlace> numbers;

  QPointF at(Point p) const { return view.to_device(p) + QPointF(left, 0); }
};

constexpr double kNameLine = 1.25;   // of the letters' height, from line to line
constexpr double kNamesFrame = 2.4;  // likewise: the strip that paint_lot_picture keeps for its frame

LaidNames lay_names(const Plan& plan, const Outcome* outcome, QSizeF size, const LotPicture& how);

}  // namespace underlawn
