// SPDX-License-Identifier: GPL-3.0-or-later
// Marks over the drawing: crossings to be dug by hand, and the places of findings.
#include <algorithm>
#include <cmath>
#include <optional>

#include "canvas/paint_context.h"
#include "layout/crossing_tags.h"
#include "plane/region.h"

namespace underlawn {

namespace {

// The conduit's leg that a crossing lies on.
std::optional<Segment> leg_at(const Layout& layout, const Crossing& x) {
  std::vector<Polyline> lines = layout.header.legs;
  if (x.conduit == Conduit::run) lines = {layout.run.line};
  std::optional<Segment> best;
  for (const Polyline& line : lines)
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
      const Segment leg{line[i], line[i + 1]};
      if (distance(leg.a, leg.b) < kSamePlace) continue;
      if (!best || distance(leg, x.at) < distance(*best, x.at)) best = leg;
    }
  return best;
}

void paint_hand_dig(PaintContext& c, const Crossing& x) {
  const auto leg = leg_at(c.outcome->layout, x);
  if (!leg || !(x.hand_dig > 0) || !std::isfinite(x.hand_dig)) return;
  const Point along = unit(leg->b - leg->a);
  const Segment stretch{x.at - x.hand_dig * along, x.at + x.hand_dig * along};
  const double width = std::max(c.plan.wishes.run_width, 8 * c.look.line / c.view.scale);
  const QPolygonF outline = c.line(rectangle_along(stretch, width));
  c.painter.setPen(c.pen(c.look.crossing, 1.4));
  QColor shade = c.look.crossing;
  shade.setAlphaF(0.16);
  c.painter.setBrush(shade);
  c.painter.drawPolygon(outline);
}

void paint_crossing(PaintContext& c, const Crossing& x, const std::string& tag) {
  if (!std::isfinite(x.at.x) || !std::isfinite(x.at.y)) return;
  paint_hand_dig(c, x);
  const QPointF p = c.at(x.at);
  Label label;
  label.text = QString::fromStdString(tag);
  label.font = c.font(0.9, QFont::Bold);
  label.colour = c.look.crossing;
  label.tag = TagShape::diamond;
  label.tag_fill = c.look.ground;
  label.tag_line = c.look.crossing;
  label.places = places_around(p, {6 * c.look.line, 6 * c.look.line}, "XX", c.font(1.3), 3);
  label.anchor = p;
  label.leader = true;
  label.rank = 1;
  label.must = true;
  c.labels.add(std::move(label));
}

// Told apart by shape: triangle, diamond, circle.
QPolygonF mark_shape(Severity severity, QPointF p, double r) {
  if (severity == Severity::error)
    return QPolygonF(
        {p + QPointF(0, -1.25 * r), p + QPointF(1.15 * r, 0.8 * r), p + QPointF(-1.15 * r, 0.8 * r)});
  if (severity == Severity::warning)
    return QPolygonF({p + QPointF(0, -1.2 * r), p + QPointF(1.2 * r, 0), p + QPointF(0, 1.2 * r),
                      p + QPointF(-1.2 * r, 0)});
  QPolygonF circle;
  for (int i = 0; i < 16; ++i) circle << p + r * QPointF(std::cos(i * M_PI / 8), std::sin(i * M_PI / 8));
  return circle;
}

// A place of findings, with the gravest of those that speak of it: two marks on one spot would hide each
// other.
struct MarkedPlace {
  const Polyline* place;
  const Finding* finding;
};

int gravity(const Finding& f) {
  return f.accepted ? -1 : static_cast<int>(f.severity);
}

std::vector<MarkedPlace> marked_places(const std::vector<Finding>& findings) {
  std::vector<MarkedPlace> all;
  for (const Finding& f : findings)
    for (const Polyline& place : f.places) {
      const auto same = std::find_if(all.begin(), all.end(),
                                     [&](const MarkedPlace& other) { return *other.place == place; });
      if (same == all.end())
        all.push_back({&place, &f});
      else if (gravity(f) > gravity(*same->finding))
        same->finding = &f;
    }
  // The gravest is painted last, on top.
  std::stable_sort(all.begin(), all.end(), [](const MarkedPlace& a, const MarkedPlace& b) {
    return gravity(*a.finding) < gravity(*b.finding);
  });
  return all;
}

QColor mark_colour(const PaintContext& c, const Finding& f) {
  return f.accepted ? c.look.faint_text : severity_colour(f.severity, c.look);
}

void paint_glow(PaintContext& c, const MarkedPlace& marked) {
  const QPolygonF line = c.line(*marked.place);
  if (line.size() < 2) return;
  QColor glow = mark_colour(c, *marked.finding);
  glow.setAlphaF(marked.finding->accepted ? 0.15 : 0.3);
  QPen wide = c.pen(glow, 9);
  wide.setCapStyle(Qt::RoundCap);
  wide.setJoinStyle(Qt::RoundJoin);
  c.painter.setPen(wide);
  c.painter.setBrush(Qt::NoBrush);
  c.painter.drawPolyline(line);
}

QPointF middle_of(const QPolygonF& line) {
  const auto half = line.size() / 2;
  return line.size() % 2 == 1 ? line[half] : (line[half - 1] + line[half]) / 2;
}

// On paper a short line would be hidden by its own mark: that stands beside it then.
QPointF mark_place(const PaintContext& c, const QPolygonF& line, double r) {
  const QPointF middle = middle_of(line);
  double whole = 0;
  for (int i = 0; i + 1 < line.size(); ++i) whole += QLineF(line[i], line[i + 1]).length();
  if (!c.options.sheet || line.size() < 2 || whole < 1 || whole > 16 * r) return middle;
  const auto half = line.size() / 2;
  const QLineF leg(line[half - 1], line[half]);
  if (leg.length() < 1e-6) return middle;
  return middle + 2.2 * r / leg.length() * QPointF(leg.dy(), -leg.dx());
}

// Aside from marks that are there already.
QPointF free_spot(QPointF p, const QVector<QPointF>& taken, double r) {
  for (int tries = 0; tries < 12; ++tries) {
    const bool free = std::none_of(taken.begin(), taken.end(),
                                   [&](QPointF other) { return QLineF(other, p).length() < 2.2 * r; });
    if (free) break;
    p.rx() += 2.4 * r;
  }
  return p;
}

void paint_mark(PaintContext& c, const Finding& f, QPointF p, double r) {
  c.painter.setPen(c.pen(c.look.ground, 1));
  c.painter.setBrush(mark_colour(c, f));
  c.painter.drawPolygon(mark_shape(f.severity, p, r));
  paint_text(c.painter, f.accepted ? "✓" : "!", plan_font(1.5 * r, QFont::Bold), c.look.ground, c.look.ground,
             p, 0, 0);
  c.labels.keep_off(QPolygonF(QRectF(p.x() - r, p.y() - r, 2 * r, 2 * r)));
}

}  // namespace

void paint_crossings(PaintContext& c) {
  if (c.outcome == nullptr || c.options.stale) return;
  const Layout& layout = c.outcome->layout;
  for (std::size_t i = 0; i < layout.crossings.size(); ++i)
    if (const std::string tag = crossing_tag(c.plan.site, layout, i); !tag.empty())
      paint_crossing(c, layout.crossings[i], tag);
}

void paint_finding_glow(PaintContext& c) {
  if (c.outcome == nullptr || !c.options.findings || c.options.stale) return;
  for (const MarkedPlace& marked : marked_places(c.outcome->findings)) paint_glow(c, marked);
}

void paint_findings(PaintContext& c) {
  if (c.outcome == nullptr || !c.options.findings || c.options.stale) return;
  const double r = 6 * c.look.line;
  QVector<QPointF> taken;
  for (const MarkedPlace& marked : marked_places(c.outcome->findings)) {
    const QPolygonF line = c.line(*marked.place);
    if (line.isEmpty()) continue;
    taken.push_back(free_spot(mark_place(c, line, r), taken, r));
    paint_mark(c, *marked.finding, taken.back(), r);
  }
}

}  // namespace underlawn
