// SPDX-License-Identifier: GPL-3.0-or-later
// Names of a chart's series, set in rows above the plot, each behind a sample of its stroke.
#pragma once

#include <QFont>
#include <QPen>
#include <QRectF>

#include "plots/chart.h"
#include "window/theme.h"

class QPainter;

namespace underlawn {

QPen chart_pen(int style, const Theme& theme, double width = 2);
void paint_dot(QPainter& painter, QPointF at, int style, const Theme& theme);
QBrush chart_hatch(int style, const Theme& theme);
QPen limit_pen(bool bound, const Theme& theme);

// Height that the rows take in `width`, and the rows painted from `area`'s top down.
double legend_height(const Chart& chart, double width, const QFont& font);
void paint_legend(QPainter& painter, const Chart& chart, const QRectF& area, const Theme& theme);

}  // namespace underlawn
