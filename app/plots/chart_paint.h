// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QRectF>
#include <QVector>

#include "plots/chart.h"
#include "window/theme.h"

class QPainter;

namespace underlawn {

// Where values lie on the device.
struct ChartFrame {
  QRectF plot;  // inside the axes
  double x_low, x_high, y_low, y_high;

  QPointF at(QPointF value) const;
  QPointF value(QPointF device) const;
};

// The frame of a chart in `area`, device units. Leaves room for title, legend and the words of the axes, set
// in `font`.
ChartFrame chart_frame(const Chart& chart, const QRectF& area, const QFont& font);

// Colours of a style, 3:1 and more against paper.
QColor chart_colour(int style, const Theme& theme);

// Where the texts of the marks go, set in `font`: near their points, but over no limit, curve or other text
// where there is room.
QVector<QRectF> mark_boxes(const Chart& chart, const ChartFrame& frame, const QFont& font);

// Paints in the painter's font.
void paint_chart(QPainter& painter, const Chart& chart, const QRectF& area, const Theme& theme);
// The line at `place` and what is read there, in a card beside it.
void paint_reading(QPainter& painter, const Chart& chart, const QRectF& area, const Theme& theme,
                   double place);

}  // namespace underlawn
