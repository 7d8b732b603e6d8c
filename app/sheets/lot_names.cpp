// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/lot_names.h"

#include "canvas/labels.h"
#include "canvas/look.h"
#include "sheets/family_facts.h"
#include "sheets/name_places.h"
#include "sheets/sheet_type.h"

namespace underlawn {

namespace {

const QColor kText = "#2b2a26";
const QColor kHalo = "#f4f6ea";
constexpr double kMargin = 1.2;  // of the letters' height, round the lot (lot_picture_view)

void paint_name(QPainter& painter, const NamePlace& name, double text) {
  const QFont font = plan_font(text);
  double y = name.box.top() + kNameLine * text / 2;
  for (const QString& line : name.lines) {
    double x = name.box.center().x();
    if (name.leader)  // towards the lot
      x = name.leader->p1().x() > name.box.center().x() ? name.box.right() - sheet::width_of(line, font) / 2
                                                        : name.box.left() + sheet::width_of(line, font) / 2;
    paint_text(painter, line, font, kText, name.leader ? Qt::transparent : kHalo, {x, y}, 0, 0.2 * text);
    y += kNameLine * text;
  }
}

void paint_leader(QPainter& painter, const QLineF& line, double text) {
  painter.setPen(QPen(kHalo, 0.2 * text, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(line);
  painter.setPen(QPen(kText, 0.06 * text));
  painter.drawLine(line);
  painter.setBrush(kText);
  painter.drawEllipse(line.p2(), 0.14 * text, 0.14 * text);
  painter.setBrush(Qt::NoBrush);
}

constexpr int kDistances = 6;  // the nearest

// From what people love to the nearest digging; how far stands where no name and no number does.
void paint_distances(QPainter& painter, const Plan& plan, const Outcome& outcome, const LaidNames& names,
                     QSizeF size, double text) {
  Labels labels;
  for (const NamePlace& name : names.names) {
    labels.keep_off(QPolygonF(name.box));
    if (name.leader) labels.avoid(QPolygonF{name.leader->p1(), name.leader->p2()});
  }
  for (const NumberPlace& number : names.numbers) labels.keep_off(QPolygonF(number.box));
  int shown = 0;
  for (const Loved& l : loved(plan, outcome)) {
    if (++shown > kDistances) break;
    const QLineF line(names.at(l.line.a), names.at(l.line.b));
    if (line.length() < 0.5 * text) continue;
    painter.setPen(QPen(kText, 0.1 * text));
    painter.drawLine(line);
    painter.setBrush(kText);
    for (const QPointF& end : {line.p1(), line.p2()}) painter.drawEllipse(end, 0.16 * text, 0.16 * text);
    painter.setBrush(Qt::NoBrush);
    Label label;
    label.text = family_length(plan, l.distance);
    label.font = plan_font(text, QFont::DemiBold);
    label.colour = kText;
    label.places =
        places_around(line.pointAt(0.5), QSizeF(0.2 * text, 0.2 * text), label.text, label.font, 4);
    labels.add(std::move(label));
  }
  labels.paint(painter, QRectF(QPointF(0, 0), size), kHalo, text / 14);
}

}  // namespace

double named_lot_height(const Plan& plan, const Outcome* outcome, double width, const LotPicture& how) {
  // Room without end above and below: what the width leaves of it.
  const LaidNames names = lay_names(plan, outcome, QSizeF(width, 100 * width), how);
  return names.lot.height() + (2 * kMargin + (how.frame ? kNamesFrame : 0)) * how.text;
}

std::vector<NamePlace> place_names(const Plan& plan, const Outcome* outcome, QSizeF size,
                                   const LotPicture& how) {
  return lay_names(plan, outcome, size, how).names;
}

void paint_named_lot(QPainter& painter, const Plan& plan, const Outcome* outcome, const QRectF& area,
                     const LotPicture& how) {
  const LaidNames laid = lay_names(plan, outcome, area.size(), how);
  LotPicture bare = how;
  bare.names = bare.numbers = bare.distances = false;
  paint_lot_picture(painter, plan, outcome, area.adjusted(laid.left, 0, -laid.right, 0), bare);
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.translate(area.topLeft());
  for (const NumberPlace& number : laid.numbers)
    paint_text(painter, number.text, plan_font(how.text, QFont::DemiBold), kText, kHalo, number.box.center(),
               0, 0.15 * how.text);
  for (const NamePlace& name : laid.names)
    if (name.leader) paint_leader(painter, *name.leader, how.text);
  if (how.distances && outcome != nullptr)
    paint_distances(painter, plan, *outcome, laid, area.size(), how.text);
  for (const NamePlace& name : laid.names) paint_name(painter, name, how.text);
  painter.restore();
}

}  // namespace underlawn
