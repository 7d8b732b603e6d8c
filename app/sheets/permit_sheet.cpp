// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/permit_sheet.h"

#include <cmath>

#include "canvas/paint_context.h"
#include "plan/clearings.h"
#include "sheets/contents.h"
#include "sheets/permit_tables.h"

namespace underlawn {

using namespace sheet;

namespace {

void arrow(QPainter& painter, QPointF tip, QPointF from) {
  const QLineF line(tip, from);
  if (line.length() < 1) return;
  const QPointF along = (from - tip) / line.length(), side(-along.y(), along.x());
  painter.drawPolygon(
      QPolygonF({tip, tip + pt(5) * along + pt(1.5) * side, tip + pt(5) * along - pt(1.5) * side}));
}

void paint_clearing(PaintContext& on, const Clearing& c, int number) {
  const QLineF line(on.at(c.line.a), on.at(c.line.b));
  on.painter.setPen(rule(0.8));
  on.painter.setBrush(kInk);
  on.painter.drawLine(line);
  arrow(on.painter, line.p1(), line.p2());
  arrow(on.painter, line.p2(), line.p1());
  Label label;
  label.text = QString("D%1  %2").arg(number).arg(shown_length(on.plan, c.measured));
  label.font = type(8.5, QFont::DemiBold);
  label.colour = kInk;
  label.must = true;
  label.rank = 1;
  label.leader = true;
  label.anchor = line.pointAt(0.5);
  label.leader_from = pt(20);
  label.places = places_around(line.pointAt(0.5), QSizeF(pt(3), pt(3)), label.text, label.font, 5);
  on.labels.avoid(QPolygonF({line.p1(), line.p2()}));
  on.labels.add(std::move(label));
}

void paint_clearings(PaintContext& on, const std::vector<Clearing>& all) {
  for (std::size_t i = 0; i < all.size(); ++i)
    if (is_dimensioned(on.plan, all[i])) paint_clearing(on, all[i], static_cast<int>(i) + 1);
}

std::vector<Piece> pieces(const Plan& plan, const Outcome& outcome, const std::vector<Clearing>& all) {
  std::vector<Piece> p;
  add(p, clearing_table(plan, all), true);
  add(p, loop_table(plan, outcome));
  add(p, lot_table(plan));
  add(p, section_block(plan, outcome), true);
  add(p, utility_table(plan, outcome), true);
  add(p, permit_notes(plan, outcome), true);
  add(p, elsewhere_table(plan), true);
  add(p, open_findings(plan, outcome));
  add(p, accepted_findings(plan, outcome));
  return p;
}

MapContent content(const Plan& plan, const Outcome& outcome) {
  const std::vector<Clearing> all = clearings(plan, outcome);
  MapContent c;
  c.title = QObject::tr("Permit plan");
  c.subtitle = QObject::tr("PERMIT PLAN, buried coil loop");
  c.after = c.after_without = pieces(plan, outcome, all);
  c.options.bearings = c.options.pictures = c.options.sheet = true;
  c.options.findings = false;
  c.options.over = [all](PaintContext& on) { paint_clearings(on, all); };
  return c;
}

// Findings and corners to tape from are not drawn here, and have no line in the legend.
Outcome as_drawn(Outcome outcome) {
  outcome.findings.clear();
  outcome.stake_out.corners.clear();
  return outcome;
}

}  // namespace

PermitSheet::PermitSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup)
    : MapSheet(plan, as_drawn(outcome), setup, content(plan, outcome)) {}

}  // namespace underlawn
