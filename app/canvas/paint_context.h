// SPDX-License-Identifier: GPL-3.0-or-later
// What every part of the drawing is given, and the strokes they share.
#pragma once

#include <QPainter>
#include <QPainterPath>

#include "canvas/hatch.h"
#include "canvas/labels.h"
#include "canvas/plan_painter.h"

namespace underlawn {

struct PaintContext {
  QPainter& painter;
  const Plan& plan;
  const Outcome* outcome;  // null while nothing is solved
  const View& view;
  const Look& look;
  const PaintOptions& options;
  Labels& labels;

  QPointF at(Point p) const;                          // on the device, kept within what a painter can bear
  QPolygonF line(const std::vector<Point>& p) const;  // points that are no numbers left out
  QRectF device() const { return {QPointF(0, 0), view.size}; }
  // `weight` in normal lines.
  QPen pen(const QColor& colour, double weight, Qt::PenStyle style = Qt::SolidLine) const;
  QPen dashed(const QColor& colour, double weight, const QVector<qreal>& pattern) const;
  QFont font(double times = 1, QFont::Weight weight = QFont::Normal) const;

  // Hatches with lines `spacing` normal lines apart.
  void hatch(const QVector<QPolygonF>& rings, double spacing, double angle, const QPen& pen) const;
  QVector<QPolygonF> rings(const Region& region) const;
  QPainterPath path(const Region& region) const;
};

// The parts, in the order they are painted.
void paint_ground(PaintContext& c);   // lot, buildable ground
void paint_terrain(PaintContext& c);  // steepness and contours
void paint_setbacks(PaintContext& c);
void paint_areas(PaintContext& c);  // easements, no-dig, drive, septic
void paint_clearances(PaintContext& c);
void paint_trees(PaintContext& c);
void paint_field(PaintContext& c);        // header, run, trenches with their coils
void paint_spoil(PaintContext& c);        // heaps, laydown; beneath the field
void paint_dig(PaintContext& c);          // order, direction, ways of the machine, ladders
void paint_piece_names(PaintContext& c);  // parts of header and run
void paint_utilities(PaintContext& c);
void paint_crossings(PaintContext& c);
void paint_wells(PaintContext& c);
void paint_houses(PaintContext& c);  // with the entry point
void paint_spot_heights(PaintContext& c);
void paint_lot_line(PaintContext& c);  // with its edge lengths
void paint_houses(PaintContext& c);    // with the entry point
void paint_lot_line(PaintContext& c);  // with its edge lengths
void paint_dimensions(PaintContext& c);
void paint_finding_glow(PaintContext& c);  // beneath what is found fault with
void paint_findings(PaintContext& c);

// A device line moved sideways (to the right of its way for by > 0), mitred; for two pipes in one trench.
QPolygonF beside(const QPolygonF& line, double by);

// A text beside or on an area: in its middle where it has room, else outside with a leader.
void label_area(PaintContext& c, const QPolygonF& area, const QString& text, const QColor& colour, int rank);

}  // namespace underlawn
