// SPDX-License-Identifier: GPL-3.0-or-later
// The family's picture of the lot with its names: inside what they name where they have room there, else in a
// column left or right of the lot with a line to their thing. So no name lies on another thing's ground.
#pragma once

#include <QLineF>
#include <QPolygonF>
#include <QStringList>
#include <optional>
#include <vector>

#include "sheets/lot_picture.h"

namespace underlawn {

// A name as it is set; device units of the picture's area.
struct NamePlace {
  QString name;
  QStringList lines;
  QRectF box;
  std::optional<QLineF> leader;  // from the name to its thing; none where it stands inside
  QPolygonF thing;
};

// Where each name goes: a leader crosses no other leader and no house that it can go round.
std::vector<NamePlace> place_names(const Plan& plan, const Outcome* outcome, QSizeF size,
                                   const LotPicture& how);

// How high a picture of that width is, so that nothing round the lot is empty.
double named_lot_height(const Plan& plan, const Outcome* outcome, double width, const LotPicture& how);

// As paint_lot_picture; names and trenches' numbers are never smaller than `how.text`. Of trenches too close
// for that only some are numbered.
void paint_named_lot(QPainter& painter, const Plan& plan, const Outcome* outcome, const QRectF& area,
                     const LotPicture& how);

}  // namespace underlawn
