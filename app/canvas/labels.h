// SPDX-License-Identifier: GPL-3.0-or-later
// Lettering of the drawing: labels are collected while things are drawn and placed afterwards, so that none
// lies on another and as few as can be on a line.
#pragma once

#include <QColor>
#include <QFont>
#include <QLineF>
#include <QPolygonF>
#include <QRectF>
#include <QString>
#include <QVector>
#include <optional>

class QPainter;

namespace underlawn {

// `gap`: a blank in the line that the letter stands in.
enum class TagShape { none, round, square, diamond, gap };

struct Label {
  QString text;
  QFont font;
  QColor colour;
  QVector<QPointF> places;  // centres of the text, the best liked first
  double angle = 0;         // degrees clockwise on the device
  int rank = 5;             // lower is placed first
  // Where no place is free it goes to the nearest free ground, with a line from the anchor (its first place
  // where there is none), and is drawn at the best of its places where there is no such ground either.
  bool must = false;
  TagShape tag = TagShape::none;
  QColor tag_fill, tag_line;
  QPointF anchor;          // what is meant; with `leader`, a fine line leads there from a place farther off
  QRectF thing = {};       // its bounds where it is more than the anchor
  bool leader = false;     // then the name also keeps out of other things' outlines
  double leader_from = 0;  // device units from the thing: nearer needs no leader
  QSizeF size = {};        // of text and tag; Labels::add sets it
};

class Labels {
 public:
  void add(Label label);
  void keep_off(const QPolygonF& ground) { taken_.push_back(ground); }  // no label may lie there
  void avoid(const QPolygonF& line, bool closed = false);               // better not there
  // Places and paints all; `room` is where labels may be, `line` the device width of a normal line.
  void paint(QPainter& painter, const QRectF& room, const QColor& halo, double line);

 private:
  bool place(const Label& label, const QRectF& room, QPointF& centre) const;
  std::optional<Label> aside(const Label& label, const QRectF& room) const;
  void paint_one(QPainter& painter, const Label& label, QPointF centre, const QColor& halo, double line);
  // From `enough` on it may be too little.
  double cost(const Label& label, QPointF centre, const QRectF& room, double enough) const;

  QVector<Label> labels_;
  QVector<QPolygonF> taken_;
  QVector<QLineF> avoided_;
  QVector<QPolygonF> areas_;  // outlines whose inside belongs to one label
};

// Places round a point or area: `reach` from its middle (half width, half height), in rings ever farther out.
QVector<QPointF> places_around(QPointF middle, QSizeF reach, const QString& text, const QFont& font,
                               int rings = 3);

// Paints text with its middle at `centre`, on a halo; the letters stay text in a PDF.
void paint_text(QPainter& painter, const QString& text, const QFont& font, const QColor& colour,
                const QColor& halo, QPointF centre, double angle, double halo_width);

QSizeF text_size(const QString& text, const QFont& font);

}  // namespace underlawn
