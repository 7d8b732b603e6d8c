// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/map_parts.h"

#include <cmath>

#include "sheets/paper.h"

namespace underlawn::sheet {

Look sheet_look() {
  Look look = Look::paper();
  look.line = pt(0.55);
  look.text_size = pt(8.5);
  return look;
}

void paint_framed(QPainter& painter, const QRectF& map, const Plan& plan, const Outcome& outcome,
                  const View& view, const PaintOptions& options) {
  painter.save();
  painter.setClipRect(map);
  painter.translate(map.topLeft());
  paint_plan(painter, plan, &outcome, view, sheet_look(), options);
  painter.restore();
  painter.setBrush(Qt::NoBrush);
  painter.setPen(rule(0.8));
  painter.drawRect(map);
}

// A needle, one half dark.
void paint_north(QPainter& painter, QPointF centre, double radius, double north) {
  painter.save();
  painter.translate(centre);
  painter.rotate(90 - north * 180 / M_PI);
  const double r = radius;
  painter.setPen(rule(0.8));
  painter.setBrush(Qt::NoBrush);
  painter.drawEllipse(QPointF(0, 0.1 * r), 0.62 * r, 0.62 * r);
  const QPointF tip(0, -0.72 * r), tail(0, 0.52 * r), left(-0.3 * r, 0.8 * r), right(0.3 * r, 0.8 * r);
  painter.setBrush(Qt::white);
  painter.drawPolygon(QPolygonF({tip, left, tail}));
  painter.setBrush(kInk);
  painter.drawPolygon(QPolygonF({tip, right, tail}));
  painter.setBrush(Qt::NoBrush);
  painter.restore();
  // Upright, whichever way north is.
  const QFont font = type(11, QFont::Bold);
  const QPointF middle = centre + 1.04 * r * QPointF(std::cos(north), -std::sin(north));
  write(painter, middle + QPointF(0, 0.36 * font.pixelSize()), "N", font, kInk, Align::centre);
}

double scale_bar_width(int scale, UnitSystem units) {
  return scale_bar_length(scale, units) * per_metre(scale);
}

void paint_scale_bar(QPainter& painter, QPointF left, int scale, UnitSystem units) {
  const double whole = scale_bar_width(scale, units), quarter = whole / 4, high = pt(5);
  painter.setPen(rule(0.7));
  for (int i = 0; i < 4; ++i) {
    painter.setBrush(i % 2 == 0 ? QBrush(kInk) : QBrush(Qt::white));
    painter.drawRect(QRectF(left.x() + i * quarter, left.y(), quarter, high));
  }
  painter.setBrush(Qt::NoBrush);
  const double metres = scale_bar_length(scale, units);
  const double shown = units == UnitSystem::us ? metres / 0.3048 : metres;
  const QFont font = type(9);
  for (int i : {0, 2, 4}) {
    QString text = QString::number(std::round(shown * i / 4 * 100) / 100);
    if (i == 4) text += units == UnitSystem::us ? " ft" : " m";
    write(painter, {left.x() + i * quarter, left.y() - pt(4)}, text, font, kInk, Align::centre);
  }
}

double title_height() {
  return pt(64);
}

namespace {

void field(QPainter& painter, QPointF at, double width, const QString& name, const QString& text) {
  const bool two = width_of(text, type(6.5)) > width;
  write(painter, at + QPointF(0, pt(two ? 6 : 8)), name, type(two ? 6 : 7, QFont::Medium), kFaint);
  if (!two) {
    write_fitted(painter, at + QPointF(0, pt(19)), text.isEmpty() ? "–" : text, width, {9.5, 6.5});
    return;
  }
  const QFont small = fitting(text, width, {6.5, 5.5}, QFont::Normal, 2);
  double y = at.y() + pt(12.5);
  for (const QString& line : wrapped(text, small, width, 2)) {
    write(painter, {at.x(), y}, line, small);
    y += pt(7);
  }
}

// A long name takes two lines in smaller type; gives back where the next line stands.
double paint_project(QPainter& painter, QPointF at, double width, const QString& project) {
  const QFont big = type(15, QFont::Bold);
  if (width_of(project, big) <= width) {
    write(painter, at + QPointF(0, pt(18)), project, big);
    return at.y() + pt(30);
  }
  const QFont small = fitting(project, width, {11, 8}, QFont::Bold, 2);
  double y = at.y() + pt(13);
  for (const QString& line : wrapped(project, small, width, 2)) {
    write(painter, {at.x(), y}, line, small);
    y += pt(12);
  }
  return y - pt(1);
}

// A line of the title block, smaller where its words are long in this language.
void fitted(QPainter& painter, QPointF at, const QString& text, double width, const QColor& colour) {
  write_fitted(painter, at, text, width, {8.5, 6}, QFont::DemiBold, colour);
}

}  // namespace

void paint_title(QPainter& painter, const QRectF& room, const Plan& plan, const Outcome& outcome,
                 const TitleFacts& facts) {
  const TitleBlock& t = plan.title;
  painter.setBrush(Qt::NoBrush);
  painter.setPen(rule(1.4));
  painter.drawRect(room);
  const double w = room.width(), pad = pt(7), top = room.top();
  const double a = room.left() + pad, b = room.left() + 0.42 * w, c = room.left() + 0.68 * w;
  painter.setPen(rule(0.6));
  for (double x : {b, c}) painter.drawLine(QPointF(x - pad, top), QPointF(x - pad, room.bottom()));
  const double first = b - a - 2 * pad, second = c - b - 2 * pad, third = room.right() - c - pad;
  double y = paint_project(painter, {a, top}, first,
                           t.project.empty() ? QObject::tr("Ground loop") : text_of(t.project));
  fitted(painter, {a, y}, facts.subtitle, first, kFaint);
  y += pt(12);
  for (const QString& line : wrapped(text_of(t.address), type(9.5), first, 2)) {
    write(painter, {a, y}, line, type(9.5));
    y += pt(12);
  }
  field(painter, {b, top + pt(1)}, second, QObject::tr("OWNER"), text_of(t.owner));
  field(painter, {b, top + pt(21)}, second, QObject::tr("DESIGNER"), text_of(t.designer));
  field(painter, {b, top + pt(41)}, second, QObject::tr("PHONE"), text_of(t.phone));
  if (!facts.scale.isEmpty())
    field(painter, {c, top + pt(1)}, third * 0.52, QObject::tr("SCALE (PAGE 1)"), facts.scale);
  field(painter, {c + third * 0.55, top + pt(1)}, third * 0.45, QObject::tr("SHEET"), facts.sheet);
  field(painter, {c, top + pt(21)}, third * 0.52, QObject::tr("DATE"), facts.date);
  field(painter, {c + third * 0.55, top + pt(21)}, third * 0.45, QObject::tr("PLAN"),
        text_of(outcome.fingerprint));
  fitted(painter, {c, top + pt(56)}, QObject::tr("Local codes govern. Call before you dig."), third, kInk);
}

}  // namespace underlawn::sheet
