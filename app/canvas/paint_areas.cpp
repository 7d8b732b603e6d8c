// SPDX-License-Identifier: GPL-3.0-or-later
// Areas on the lot: each kind is told apart by its outline and filling, in black and white too.
#include <algorithm>
#include <cmath>

#include "canvas/map_name.h"

namespace underlawn {

namespace {

void fill(PaintContext& c, const QPolygonF& area, QColor colour, double alpha) {
  colour.setAlphaF(alpha);
  c.painter.setPen(Qt::NoPen);
  c.painter.setBrush(colour);
  c.painter.drawPolygon(area);
  c.painter.setBrush(Qt::NoBrush);
}

void outline(PaintContext& c, const QPolygonF& area, const QPen& pen) {
  c.painter.setBrush(Qt::NoBrush);
  c.painter.setPen(pen);
  c.painter.drawPolygon(area);
}

void paint_easement(PaintContext& c, const QPolygonF& area) {
  c.hatch({area}, 9, -45, c.dashed(c.look.easement, 0.6, {5, 3}));
  outline(c, area, c.dashed(c.look.easement, 1, {12, 3, 2, 3}));
}

void paint_no_dig(PaintContext& c, const QPolygonF& area) {
  fill(c, area, c.look.no_dig, 0.05);
  const QPen fine = c.pen(c.look.no_dig, 0.4);
  c.hatch({area}, 8, 45, fine);
  c.hatch({area}, 8, -45, fine);
  outline(c, area, c.pen(c.look.no_dig, 1));
}

// Dots, as paving is drawn.
void paint_drive(PaintContext& c, const QPolygonF& area) {
  fill(c, area, c.look.drive, 0.10);
  QPen dots = c.dashed(c.look.drive, 1, {0.01, 6});
  dots.setCapStyle(Qt::RoundCap);
  c.hatch({area}, 5, 30, dots);
  outline(c, area, c.pen(c.look.drive, 1));
}

void paint_tank(PaintContext& c, const QPolygonF& area) {
  fill(c, area, c.look.septic, 0.15);
  outline(c, area, c.pen(c.look.septic, 1.6));
  const QPointF middle = area.boundingRect().center();
  QTransform smaller;
  smaller.translate(middle.x(), middle.y());
  smaller.scale(0.72, 0.72);
  smaller.translate(-middle.x(), -middle.y());
  outline(c, smaller.map(area), c.pen(c.look.septic, 0.6));
}

// Degrees of the longest side: the pipes of a drain field are drawn along it.
double long_side(const QPolygonF& area) {
  QLineF longest;
  for (int i = 0; i < area.size(); ++i) {
    const QLineF side(area[i], area[(i + 1) % area.size()]);
    if (side.length() > longest.length() + 1e-9) longest = side;
  }
  return longest.angle();
}

void paint_leach(PaintContext& c, const QPolygonF& area, bool reserve) {
  fill(c, area, c.look.septic, reserve ? 0.03 : 0.08);
  const QPen lines = reserve ? c.dashed(c.look.septic, 0.7, {6, 5}) : c.pen(c.look.septic, 0.8);
  c.hatch({area}, 9, long_side(area), lines);
  outline(c, area, c.dashed(c.look.septic, 1.2, reserve ? QVector<qreal>{4, 4} : QVector<qreal>{12, 4}));
}

void paint_area(PaintContext& c, const Feature& f, const QPolygonF& area) {
  switch (f.kind) {
    case FeatureKind::easement:
      return paint_easement(c, area);
    case FeatureKind::no_dig:
      return paint_no_dig(c, area);
    case FeatureKind::drive:
      return paint_drive(c, area);
    case FeatureKind::septic_tank:
      return paint_tank(c, area);
    case FeatureKind::drain_field:
    case FeatureKind::reserve_field:
      return paint_leach(c, area, f.kind == FeatureKind::reserve_field);
    default:
      return;
  }
}

QColor lettering(const PaintContext& c, FeatureKind kind) {
  switch (kind) {
    case FeatureKind::easement:
      return c.look.easement;
    case FeatureKind::no_dig:
      return c.look.no_dig;
    case FeatureKind::drive:
      return c.look.faint_text;
    default:
      return c.look.septic;
  }
}

// Where the run enters: a mark that points into the wall.
void paint_entry(PaintContext& c) {
  const auto& entry = c.plan.site.entry;
  if (!entry || !std::isfinite(entry->at.x) || !std::isfinite(entry->at.y)) return;
  const QPointF p = c.at(entry->at);
  const double r = 5.5 * c.look.line;
  c.painter.setPen(c.pen(c.look.run, 1.6));
  c.painter.setBrush(c.look.ground);
  c.painter.drawEllipse(p, r, r);
  c.painter.setPen(Qt::NoPen);
  c.painter.setBrush(c.look.run);
  c.painter.drawEllipse(p, 0.45 * r, 0.45 * r);
  c.labels.keep_off(QPolygonF(QRectF(p.x() - r, p.y() - r, 2 * r, 2 * r)));
  if (!c.options.labels) return;
  Label label;
  label.text = QObject::tr("Entry");
  label.font = c.font(0.92, QFont::DemiBold);
  label.colour = c.look.run;
  label.places = places_around(p, {r, r}, label.text, label.font, 2);
  label.rank = 3;
  c.labels.add(std::move(label));
}

// Which way is out of the building at its corner p, on the device.
QPointF way_out(const QPolygonF& walls, QPointF p) {
  int at = 0;
  for (int i = 0; i < walls.size(); ++i)
    if (QLineF(walls[i], p).length() < QLineF(walls[at], p).length()) at = i;
  const auto n = static_cast<int>(walls.size());
  const auto away = [&](QPointF other) {
    const double d = QLineF(other, p).length();
    return d > 0 ? (p - other) / d : QPointF();
  };
  QPointF out = away(walls[(at + n - 1) % n]) + away(walls[(at + 1) % n]);
  const double d = std::hypot(out.x(), out.y());
  out = d > 0 ? out / d : QPointF(0, 1);
  return walls.containsPoint(p + 0.5 * out, Qt::OddEvenFill) ? -out : out;
}

// The walls that have the corner, and whether a tag at a place would lie on a wall or in a building.
class Walls {
 public:
  explicit Walls(const PaintContext& c) {
    for (const Feature& f : c.plan.site.features)
      if (f.kind == FeatureKind::house && f.points.size() > 2) all_.push_back(c.line(f.points));
  }
  QPointF out_of(QPointF corner) const {
    const QPolygonF* nearest = nullptr;
    double least = 1e18;
    for (const QPolygonF& walls : all_)
      for (const QPointF& p : walls)
        if (const double d = QLineF(p, corner).length(); d < least) {
          least = d;
          nearest = &walls;
        }
    return nearest == nullptr ? QPointF(0, 1) : way_out(*nearest, corner);
  }
  bool meet(const QRectF& tag) const {
    return std::any_of(all_.begin(), all_.end(),
                       [&](const QPolygonF& w) { return w.intersects(QPolygonF(tag)); });
  }

 private:
  QVector<QPolygonF> all_;
};

// At the corner, out of the building; farther off, with a leader, where other walls are near.
void tag_corner(PaintContext& c, const Walls& walls, const HouseCorner& corner) {
  const QPointF p = c.at(corner.at), out = walls.out_of(p);
  Label label;
  label.text = QString::fromStdString(corner.tag);
  label.font = c.font(1.05, QFont::Bold);
  label.colour = c.look.ground;
  label.tag = TagShape::square;
  label.tag_fill = label.tag_line = c.look.text;
  label.rank = 0;
  label.must = true;
  label.anchor = p;
  label.leader = true;
  const double size = label.font.pixelSize();
  label.leader_from = 1.5 * size;
  for (double away : {1.35, 1.8, 2.5, 3.3})
    for (double turn : {0.0, 0.5, -0.5, 0.9, -0.9}) {
      const QPointF d(out.x() * std::cos(turn) - out.y() * std::sin(turn),
                      out.x() * std::sin(turn) + out.y() * std::cos(turn));
      const QPointF place = p + away * size * d;
      if (!walls.meet(QRectF(place.x() - 0.85 * size, place.y() - 0.85 * size, 1.7 * size, 1.7 * size)))
        label.places.push_back(place);
    }
  if (label.places.isEmpty()) label.places.push_back(p + 1.35 * size * out);
  c.labels.add(std::move(label));
  c.painter.setPen(Qt::NoPen);
  c.painter.setBrush(c.look.text);
  const double dot = 2.4 * c.look.line;
  c.painter.drawEllipse(p, dot, dot);
  c.labels.keep_off(QPolygonF(QRectF(p.x() - dot, p.y() - dot, 2 * dot, 2 * dot)));  // of another letter too
}

void paint_corner_tags(PaintContext& c) {
  if (!c.options.corner_tags || c.outcome == nullptr) return;
  const Walls walls(c);
  for (const HouseCorner& corner : c.outcome->stake_out.corners) tag_corner(c, walls, corner);
}

}  // namespace

void paint_areas(PaintContext& c) {
  for (FeatureKind kind : {FeatureKind::easement, FeatureKind::drive, FeatureKind::no_dig,
                           FeatureKind::reserve_field, FeatureKind::drain_field, FeatureKind::septic_tank})
    for (const Feature& f : c.plan.site.features) {
      if (f.kind != kind) continue;
      const QPolygonF area = c.line(f.points);
      paint_area(c, f, area);
      c.labels.avoid(area, true);
      label_area(c, area, map_name(c, f), lettering(c, kind), 6);
    }
}

void paint_houses(PaintContext& c) {
  for (const Feature& f : c.plan.site.features) {
    if (f.kind != FeatureKind::house) continue;
    const QPolygonF walls = c.line(f.points);
    c.painter.setPen(Qt::NoPen);
    c.painter.setBrush(c.look.ground);
    c.painter.drawPolygon(walls);
    QColor poche = c.look.house;
    poche.setAlphaF(0.45);
    c.hatch({walls}, 4.5, 45, c.pen(poche, 0.5));
    outline(c, walls, c.pen(c.look.house, 2.6));
    c.labels.avoid(walls, true);
    label_area(c, walls, map_name(c, f), c.look.text, 3);
  }
  paint_entry(c);
  paint_corner_tags(c);
}

}  // namespace underlawn
