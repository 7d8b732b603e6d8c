// SPDX-License-Identifier: GPL-3.0-or-later
// Strokes that the details share.
#pragma once

#include <QPainter>

#include "base/quantity.h"
#include "sheets/sheet_type.h"

namespace underlawn::sheet {

// A dimension line with ticks at its ends, its text at `label`.
void dimension(QPainter& painter, QPointF a, QPointF b, const QString& text, QPointF label, Align align);

// A word with a fine line from what it names.
void named(QPainter& painter, QPointF what, QPointF word, const QString& text, Align align = Align::left);

// Ground line with its short strokes below, from x to x.
void ground_line(QPainter& painter, double from, double to, double y);

// The largest of the scales at which `metres` takes no more than `room` sheet units; the last where none
// does.
int detail_scale(UnitSystem units, double metres, double room);

// As it is said on a detail: "3/8\" = 1'-0\" (1:32)", "1:50".
QString detail_scale_text(int scale, UnitSystem units);

}  // namespace underlawn::sheet
