// SPDX-License-Identifier: GPL-3.0-or-later
// What lies over the drawing on the screen and is printed on no sheet.
#pragma once

#include "canvas/typed_entry.h"
#include "tools/tool.h"

namespace underlawn {

// The catch mark, its name and the edge it speaks of.
void paint_snap(const ToolPaint& p, const Snap& snap, std::optional<Point> from);

// Outline of what is selected; with `with_grips` also where it can be taken hold of.
void paint_selected(const ToolPaint& p, const Plan& plan, const Outcome* outcome,
                    const std::vector<Selected>& what, bool with_grips);

void paint_pointed_out(const ToolPaint& p, const std::vector<Polyline>& places);

// Length, angle and bearing of the piece being drawn, or the text typed for it, beside the pointer.
void paint_readout(const ToolPaint& p, const TypedEntry& typed, std::optional<Point> from, const Plan& plan);

// Lengths of the sides of what is selected that a gesture is changing.
void paint_live_lengths(const ToolPaint& p, const Plan& before, const Plan& now,
                        const std::vector<Selected>& what);
void paint_held_way(const ToolPaint& p, Point from, Point way);  // the direction that is held

void paint_key_cursor(const ToolPaint& p, Point at);
void paint_scale_bar(const ToolPaint& p, UnitSystem units);
void paint_north(const ToolPaint& p, double north);
void paint_welcome(const ToolPaint& p);  // while nothing is drawn

}  // namespace underlawn
