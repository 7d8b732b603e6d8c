// SPDX-License-Identifier: GPL-3.0-or-later
// How a gesture in hand looks, the same for every tool.
#pragma once

#include "tools/tool.h"

namespace underlawn {

// The line drawn so far, on to the pointer, and faintly back to its start where it will close. Points are
// dotted.
void paint_drawn(const ToolPaint& p, const Polyline& drawn, std::optional<Point> next, bool closes);

// A short text on a plate, readable on anything, kept inside the view. `at` is its lower left.
void paint_plate(const ToolPaint& p, QPointF at, const QStringList& lines, const QColor& text);

// Squares that can be taken hold of; round ones where taking hold makes a new corner.
inline constexpr double kGripSize = 9;  // px
void paint_grip(const ToolPaint& p, Point at, bool round, bool picked);

}  // namespace underlawn
