// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/permit_sheet.h"

#include <cmath>

#include "canvas/labels.h"
#include "plan/clearings.h"
#include "sheets/contents.h"
#include "sheets/permit_tables.h"

namespace underlawn {

using namespace sheet;

namespace {

// Dimensions that a reviewer looks for; the rest stand in the table only.
bool drawn(const Plan& plan, const Clearing& c) {
  if (distance(c.line.a, c.line.b) < 0.3) return false;
  if (!c.coil) return false;
  if (c.feature_id == 0) return true;
  const Feature* f = find_feature(plan.site, c.feature_id);
  if (f == nullptr) return false;
  switch (f->kind) {
    case FeatureKind::septic_tank:
    case FeatureKind::drain_field:
    case FeatureKind::reserve_field:
    case FeatureKind::well:
    case FeatureKind::house:
    case FeatureKind::easement:
      return true;
    default:
      return false;
  }
}

void arrow(QPainter& painter, QPointF tip, QPointF from) {
  const QLineF line(tip, from);
  if (line.length() < 1) return;
  const QPointF along = (from - tip) / line.length(), side(-along.y(), along.x());
  painter.drawPolygon(
      QPolygonF({tip, tip + pt(5) * along + pt(1.5) * side, tip + pt(5) * along - pt(1.5) * side}));
}

void paint_clearing(QPainter& painter, Labels& labels, const Plan& plan, const Clearing& c, int number,
                    const View& view) {
  const QLineF line(view.to_device(c.line.a), view.to_device(c.line.b));
  painter.setPen(rule(0.8));
  painter.setBrush(kInk);
  painter.drawLine(line);
  arrow(painter, line.p1(), line.p2());
  arrow(painter, line.p2(), line.p1());
  Label label;
  label.text = QString("D%1  %2").arg(number).arg(shown_length(plan, c.measured));
  label.font = type(8.5, QFont::DemiBold);
  label.colour = kInk;
  label.must = true;
  label.rank = 1;
  label.leader = true;
  label.anchor = line.pointAt(0.5);
  label.leader_from = pt(20);
  label.places = places_around(line.pointAt(0.5), QSizeF(pt(3), pt(3)), label.text, label.font, 5);
  labels.add(std::move(label));
}

void paint_clearings(QPainter& painter, const Plan& plan, const std::vector<Clearing>& all,
                     const View& view) {
  Labels labels;
  for (std::size_t i = 0; i < all.size(); ++i)
    if (drawn(plan, all[i])) paint_clearing(painter, labels, plan, all[i], static_cast<int>(i) + 1, view);
  labels.paint(painter, QRectF(QPointF(0, 0), view.size), Qt::white, pt(0.55));
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
  c.over = [plan, all](QPainter& painter, const View& view) { paint_clearings(painter, plan, all, view); };
  return c;
}

}  // namespace

PermitSheet::PermitSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup)
    : MapSheet(plan, outcome, setup, content(plan, outcome)) {}

}  // namespace underlawn
