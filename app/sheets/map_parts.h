// SPDX-License-Identifier: GPL-3.0-or-later
// What stands round the plan on the first page.
#pragma once

#include <QPainter>
#include <QRectF>

#include "canvas/look.h"
#include "canvas/plan_painter.h"
#include "plan/outcome.h"
#include "plan/plan.h"
#include "sheets/sheet_type.h"

namespace underlawn::sheet {

// The paper look in sheet units.
Look sheet_look();

// The plan seen through `view` inside a thin frame; nothing of it is drawn beyond that.
void paint_framed(QPainter& painter, const QRectF& map, const Plan& plan, const Outcome& outcome,
                  const View& view, const PaintOptions& options);

void paint_north(QPainter& painter, QPointF centre, double radius, double north);
// Returns nothing; the bar starts at `left` and is `scale_bar_length` long at the scale.
void paint_scale_bar(QPainter& painter, QPointF left, int scale, UnitSystem units);
double scale_bar_width(int scale, UnitSystem units);

// Only what is in the drawing is explained. Height needed in a width, and painting.
double legend_height(const Plan& plan, const Outcome& outcome, double width);
void paint_legend(QPainter& painter, const QRectF& room, const Plan& plan, const Outcome& outcome);

struct TitleFacts {
  QString subtitle;  // "DIG SHEET, buried coil loop"
  QString sheet;     // "1 of 2"
  QString scale;     // of the plan on the first page; "" where there is none
  QString date;
};
double title_height();
void paint_title(QPainter& painter, const QRectF& room, const Plan& plan, const Outcome& outcome,
                 const TitleFacts& facts);

}  // namespace underlawn::sheet
