// SPDX-License-Identifier: GPL-3.0-or-later
// Wells and trees, and how far digging stays from things.
#include <algorithm>
#include <cmath>

#include "base/quantity.h"
#include "canvas/map_name.h"
#include "plane/region.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

// Clearances matter on the lot only, and off it they would cover the neighbours' ground.
void clip_to_lot(PaintContext& c) {
  const QPolygonF lot = c.line(lot_ring(c.plan.site));
  if (lot.size() < 3) return;
  QPainterPath inside;
  inside.addPolygon(lot);
  inside.closeSubpath();
  c.painter.setClipPath(inside, Qt::IntersectClip);
}

bool has_place(const Feature& f) {
  return !f.points.empty() && std::isfinite(f.points[0].x) && std::isfinite(f.points[0].y);
}

// A ring of small arcs, as crowns are drawn.
QPainterPath crown(QPointF middle, double radius, double bump) {
  QPainterPath path;
  const int arcs = std::clamp(static_cast<int>(2 * M_PI * radius / bump), 8, 90);
  const auto on_ring = [&](double i, double r) {
    const double angle = 2 * M_PI * i / arcs;
    return middle + r * QPointF(std::cos(angle), std::sin(angle));
  };
  const double inner = radius - 0.22 * 2 * M_PI * radius / arcs;
  path.moveTo(on_ring(0, inner));
  for (int i = 0; i < arcs; ++i) path.quadTo(on_ring(i + 0.5, 2 * radius - inner), on_ring(i + 1, inner));
  path.closeSubpath();
  return path;
}

void label_point(PaintContext& c, const Feature& f, double reach, const QColor& colour) {
  if (!c.options.labels) return;
  const QPointF p = c.at(f.points[0]);
  if (!c.device().contains(p)) return;
  Label label;
  label.text = map_name(c, f);
  label.font = c.font();
  label.colour = colour;
  label.places = places_around(p, {reach, reach}, label.text, label.font, 4);
  label.anchor = p;
  label.leader = true;
  label.leader_from = reach + 1.1 * label.font.pixelSize();
  label.rank = 5;
  c.labels.add(std::move(label));
}

void paint_tree(PaintContext& c, const Feature& f) {
  const QPointF p = c.at(f.points[0]);
  const double zone = c.view.to_device(root_zone_radius(c.plan.site, f));
  if (c.options.zones && std::isfinite(zone) && zone > 0 && zone < 1e5) {
    QColor shade = c.look.tree;
    shade.setAlphaF(c.look.dark ? 0.16 : 0.09);
    c.painter.setBrush(shade);
    c.painter.setPen(c.pen(c.look.tree, 0.9));
    c.painter.drawPath(crown(p, zone, 11 * c.look.line));
  }
  const double trunk = std::max(c.view.to_device(f.trunk_diameter) / 2, 2.6 * c.look.line);
  c.painter.setPen(Qt::NoPen);
  c.painter.setBrush(c.look.tree);
  if (std::isfinite(trunk)) c.painter.drawEllipse(p, std::min(trunk, 1e4), std::min(trunk, 1e4));
  label_point(c, f, std::max(4 * c.look.line, std::isfinite(trunk) ? std::min(trunk, 1e4) : 0), c.look.tree);
}

void paint_well(PaintContext& c, const Feature& f) {
  const QPointF p = c.at(f.points[0]);
  const double r = 5 * c.look.line;
  c.painter.setBrush(c.look.ground);
  c.painter.setPen(c.pen(c.look.well, 1.6));
  c.painter.drawEllipse(p, r, r);
  c.painter.drawLine(p - QPointF(1.7 * r, 0), p + QPointF(1.7 * r, 0));
  c.painter.drawLine(p - QPointF(0, 1.7 * r), p + QPointF(0, 1.7 * r));
  c.labels.keep_off(QPolygonF(QRectF(p.x() - r, p.y() - r, 2 * r, 2 * r)));
  label_point(c, f, 1.7 * r, c.look.well);
}

bool in_a_house(const Site& site, Point p) {
  return std::ranges::any_of(site.features, [&](const Feature& f) {
    return f.kind == FeatureKind::house && f.points.size() > 2 && contains(f.points, p);
  });
}

// How far off, at the arc itself, where it lies on the lot and in no house: there it would be read as a
// wall's.
void label_arc(PaintContext& c, const Feature& well, double radius) {
  if (!c.options.labels || !c.options.sheet || radius < 20 * c.look.line) return;
  const Ring lot = lot_ring(c.plan.site);
  const double metres = trench_clearance(c.plan.site, well);
  Label label;
  label.text = QString::fromStdString(print_quantity(Quantity::length, metres, c.plan.units));
  label.font = c.font(0.85);
  label.colour = c.look.well;
  label.rank = 6;
  for (int i = 0; i < 24; ++i) {
    const Point p = well.points[0] + metres * direction(i * M_PI / 12);
    if ((lot.size() < 3 || contains(lot, p)) && !in_a_house(c.plan.site, p)) label.places.push_back(c.at(p));
  }
  if (!label.places.isEmpty()) c.labels.add(std::move(label));
}

}  // namespace

void paint_clearances(PaintContext& c) {
  if (!c.options.zones) return;
  c.painter.save();
  clip_to_lot(c);
  c.painter.setBrush(Qt::NoBrush);
  for (const Feature& f : c.plan.site.features) {
    if (f.kind != FeatureKind::well || !has_place(f)) continue;
    const double radius = c.view.to_device(trench_clearance(c.plan.site, f));
    if (!std::isfinite(radius) || radius > 1e5) continue;
    c.painter.setPen(c.dashed(c.look.well, 0.9, {9, 3, 2, 3}));
    c.painter.drawEllipse(c.at(f.points[0]), radius, radius);
    label_arc(c, f, radius);
  }
  c.painter.restore();
}

void paint_trees(PaintContext& c) {
  for (const Feature& f : c.plan.site.features)
    if (f.kind == FeatureKind::tree && has_place(f)) paint_tree(c, f);
}

void paint_wells(PaintContext& c) {
  for (const Feature& f : c.plan.site.features)
    if (f.kind == FeatureKind::well && has_place(f)) paint_well(c, f);
}

}  // namespace underlawn
