// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/marks.h"
#include "layout/given.h"
#include "layout/header_groups.h"
#include "plan/dimensions.h"
#include "plane/strip.h"
#include "tools/gesture_paint.h"
#include "tools/grips.h"

namespace underlawn {

namespace {

using Kind = Selected::Kind;

QPolygonF on_device(const ToolPaint& p, const Polyline& points, bool closed) {
  QPolygonF line;
  for (Point point : points) line << p.view.to_device(point);
  if (closed && !line.isEmpty()) line << line.front();
  return line;
}

constexpr qsizetype kFewCorners = 24;

// Few and long sides one by one, with flat ends: a tenth of the time that one line with its joins takes. On
// many short ones, as of an arc, the gaps between flat ends would show.
void draw_sides(const ToolPaint& p, const QPolygonF& line, QPen pen) {
  if (line.size() > kFewCorners) {
    pen.setCapStyle(Qt::RoundCap);
    pen.setJoinStyle(Qt::RoundJoin);
    p.painter.setPen(pen);
    p.painter.drawPolyline(line);
    return;
  }
  p.painter.setPen(pen);
  for (qsizetype i = 1; i < line.size(); ++i) p.painter.drawLine(line[i - 1], line[i]);
}

void stroke(const ToolPaint& p, const QPolygonF& line, double width) {
  QColor glow = p.look.selection;
  glow.setAlphaF(0.28F);
  p.painter.setBrush(Qt::NoBrush);
  draw_sides(p, line, QPen(glow, width + 5, Qt::SolidLine, Qt::FlatCap));
  draw_sides(p, line, QPen(p.look.selection, width, Qt::SolidLine, Qt::FlatCap));
  p.painter.setPen(QPen(p.look.selection, width, Qt::SolidLine, Qt::RoundCap));
  p.painter.drawPoints(line);
}

void ring_round(const ToolPaint& p, Point at, double radius) {
  QColor glow = p.look.selection;
  glow.setAlphaF(0.28F);
  p.painter.setBrush(Qt::NoBrush);
  for (const QPen& pen : {QPen(glow, 6), QPen(p.look.selection, 2)}) {
    p.painter.setPen(pen);
    p.painter.drawEllipse(p.view.to_device(at), radius, radius);
  }
}

void outline_feature(const ToolPaint& p, const Feature& f) {
  if (f.points.empty()) return;
  if (shape_of(f.kind) == FeatureShape::point) return ring_round(p, f.points.front(), 11);
  stroke(p, on_device(p, f.points, shape_of(f.kind) == FeatureShape::area), 2);
}

void outline_derived(const ToolPaint& p, const Layout& layout, const Selected& what) {
  if (what.kind == Kind::header)
    for (std::size_t i = 0; i < layout.header.legs.size(); ++i)
      if (what.id == 0 || group_of_leg(layout, i) == what.id)
        stroke(p, on_device(p, layout.header.legs[i], false), 2);
  if (what.kind == Kind::run) stroke(p, on_device(p, layout.run.line, false), 2);
  if (what.kind != Kind::trench) return;
  for (const Trench& t : layout.trenches)
    if (t.number == what.id && length_of(t) > kSamePlace) stroke(p, on_device(p, floor_of(t), true), 2);
}

void outline_locked(const ToolPaint& p, const Wishes& wishes, std::size_t index) {
  const Polyline line = line_of(wishes.locked[index]);
  if (length(line) > kSamePlace) stroke(p, on_device(p, strip_along(line, wishes.trench_width), true), 2);
}

// Both ends of a trench can be taken hold of; the coil in the run follows the run.
void paint_ends(const ToolPaint& p, const Layout& layout, const Selected& what) {
  for (const Trench& t : layout.trenches)
    if (what.kind == Kind::trench && t.number == what.id && t.role == TrenchRole::field)
      for (Point at : {t.head, t.end}) paint_grip(p, at, false, false);
}

void outline_lot(const ToolPaint& p, const Site& site, const Selected& what) {
  const Ring lot = lot_ring(site);
  if (lot.empty()) return;
  stroke(p, on_device(p, lot, true), 1.5);
  const auto i = static_cast<std::size_t>(what.index);
  if (what.kind == Kind::lot_edge && i < lot.size())
    stroke(p, on_device(p, {lot[i], lot[(i + 1) % lot.size()]}, false), 4);
}

void outline(const ToolPaint& p, const Plan& plan, const Outcome* outcome, const Selected& what) {
  switch (what.kind) {
    case Kind::nothing:
      break;
    case Kind::lot:
    case Kind::lot_edge:
      outline_lot(p, plan.site, what);
      break;
    case Kind::feature:
      if (const Feature* f = find_feature(plan.site, what.id)) outline_feature(p, *f);
      break;
    case Kind::entry:
      if (plan.site.entry) ring_round(p, plan.site.entry->at, 9);
      break;
    case Kind::locked:
      if (is_there(plan, what)) outline_locked(p, plan.wishes, static_cast<std::size_t>(what.id));
      break;
    case Kind::height:
      if (is_there(plan, what)) ring_round(p, plan.site.heights[static_cast<std::size_t>(what.id)].at, 7);
      break;
    case Kind::dimension:
      if (is_there(plan, what)) {
        const Dimension& d = plan.dimensions[static_cast<std::size_t>(what.id)];
        if (const auto line = line_of(d))
          stroke(p, on_device(p, {d.from, line->a, line->b, d.to}, false), 1.5);
      }
      break;
    case Kind::trench:
    case Kind::header:
    case Kind::run:
      if (outcome) outline_derived(p, outcome->layout, what);
      break;
  }
}

// Middles of edges too short to be hit beside their corners are left out.
bool has_room(const ToolPaint& p, const Plan& plan, const Grip& grip) {
  if (!grip.inserts) return true;
  const auto corner = edit::handle_position(plan, grip.handle);
  return corner && p.view.to_device(distance(*corner, grip.at)) > 1.6 * kGripSize;
}

}  // namespace

void paint_selected(const ToolPaint& p, const Plan& plan, const Outcome* outcome,
                    const std::vector<Selected>& what, bool with_grips) {
  p.painter.save();
  for (const Selected& s : what) outline(p, plan, outcome, s);
  for (const Selected& s : what) {
    if (!with_grips || what.size() > 1) break;
    if (outcome) paint_ends(p, outcome->layout, s);
    const auto picked = handle_of(s);
    const Feature* f = s.kind == Kind::feature ? find_feature(plan.site, s.id) : nullptr;
    if (f && shape_of(f->kind) == FeatureShape::point) continue;
    for (const Grip& grip : grips(plan, s))
      if (has_room(p, plan, grip))
        paint_grip(p, grip.at, grip.inserts, !grip.inserts && picked == grip.handle);
  }
  p.painter.restore();
}

void paint_pointed_out(const ToolPaint& p, const std::vector<Polyline>& places) {
  p.painter.save();
  for (const Polyline& place : places) {
    if (place.size() == 1)
      ring_round(p, place.front(), 14);
    else
      stroke(p, on_device(p, place, false), 3);
  }
  p.painter.restore();
}

}  // namespace underlawn
