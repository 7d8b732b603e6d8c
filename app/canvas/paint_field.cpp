// SPDX-License-Identifier: GPL-3.0-or-later
// What is dug and laid: coil trenches with their real loops, header and run as two pipes.
#include <cmath>

#include "canvas/paint_context.h"
#include "field/straight.h"
#include "layout/given.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

constexpr int kMostLoops = 3000;  // in one trench

QColor shown(const PaintContext& c, const QColor& colour) {
  return c.options.stale ? c.look.stale : colour;
}

bool beside_the_point(const PaintContext& c, const Trench& t) {
  return c.options.of_trench != 0 && t.number != c.options.of_trench;
}

QColor shown(const PaintContext& c, const Trench& t, const QColor& colour) {
  return beside_the_point(c, t) ? c.look.stale : shown(c, colour);
}

// Both pipes of a conduit: supply solid, return dashed.
void paint_two_pipes(PaintContext& c, const QPolygonF& line, double width) {
  const double apart = std::max(width / 4, 1.5 * c.look.line);
  c.painter.setBrush(Qt::NoBrush);
  c.painter.setPen(c.pen(shown(c, c.look.run), 1.3));
  c.painter.drawPolyline(beside(line, apart));
  c.painter.setPen(c.dashed(shown(c, c.look.run), 1.3, {5, 2.5}));
  c.painter.drawPolyline(beside(line, -apart));
}

void paint_conduit(PaintContext& c, const Polyline& points, double trench_width) {
  const QPolygonF line = c.line(points);
  if (line.size() < 2) return;
  const double width = std::isfinite(trench_width) ? std::clamp(c.view.to_device(trench_width), 0.0, 1e5) : 0;
  const double drawn = std::max(width, 6 * c.look.line);
  QPainterPath middle;
  middle.addPolygon(line);
  QPainterPathStroker stroker;
  stroker.setWidth(drawn);
  stroker.setCapStyle(Qt::FlatCap);
  stroker.setJoinStyle(Qt::MiterJoin);
  c.painter.setPen(c.pen(shown(c, c.look.trench), 0.7));
  c.painter.setBrush(c.look.trench_fill);
  c.painter.drawPath(stroker.createStroke(middle).simplified());
  paint_two_pipes(c, line, drawn);
  c.labels.avoid(line);
}

bool loops_can_be_seen(const PaintContext& c, const Coil& coil) {
  if (coil.pattern == CoilPattern::upright_coil) return false;  // they stand: edge on from above
  if (c.options.stale) return false;                            // hundreds of loops, of what is on its way
  return c.options.coils && coil.loops > 0 && coil.loops < kMostLoops &&
         c.view.to_device(coil.pitch) > 2.2 * c.look.line;
}

void paint_coil(PaintContext& c, const Trench& t) {
  const double loop = c.view.to_device(t.coil.loop_diameter);
  const int points = std::clamp(static_cast<int>(loop / (1.2 * c.look.line)), 16, 48);
  const Polyline path = on_lot(t, coil_path(t.coil, points));
  QPen pen = c.pen(shown(c, t, c.look.coil), 0.55);
  pen.setJoinStyle(Qt::RoundJoin);
  c.painter.setPen(pen);
  c.painter.setBrush(Qt::NoBrush);
  c.painter.drawPolyline(c.line(path));
}

// Straight pipe, and loops that stand: what is above one another is one line from above.
void paint_lines(PaintContext& c, const Trench& t) {
  const Polyline flat = t.coil.pattern == CoilPattern::upright_coil
                            ? Polyline{{0, 0}, {t.coil.trench_length, 0}}
                            : straight_path(t.coil);
  c.painter.setPen(c.pen(shown(c, t, c.look.coil), is_straight(t.coil.pattern) ? 0.8 : 1.6));
  c.painter.setBrush(Qt::NoBrush);
  c.painter.drawPolyline(c.line(on_lot(t, flat)));
}

void tag(PaintContext& c, const Trench& t) {
  if (!c.options.labels) return;
  const Polyline middle = middle_line(t);
  const double long_ = length(middle);
  Label label;
  label.text = QString::number(t.number);
  label.font = c.font(1.05, QFont::Bold);
  label.tag = TagShape::round;
  label.tag_line = shown(c, t, c.look.trench);
  // Dark: it is locked, or what the page is about.
  const bool dark = c.options.of_trench != 0 ? t.number == c.options.of_trench : t.locked;
  label.colour = dark ? c.look.ground : label.tag_line;
  label.tag_fill = dark ? label.tag_line : c.look.ground;
  label.must = !beside_the_point(c, t);
  label.rank = label.must ? 1 : 6;
  for (double share : {0.5, 0.42, 0.58, 0.34, 0.66, 0.25, 0.75, 0.15, 0.85, 0.08, 0.92, 0.04, 0.96})
    label.places.push_back(c.at(place_along(middle, share * long_).at));
  c.labels.add(std::move(label));
}

void paint_trench(PaintContext& c, const Trench& t) {
  if (!std::isfinite(length_of(t)) || !std::isfinite(t.width) || length_of(t) < kSamePlace) return;
  const QPolygonF outline = c.line(floor_of(t));
  c.painter.setPen(c.pen(shown(c, t, c.look.trench), 1.2));
  c.painter.setBrush(c.look.trench_fill);
  c.painter.drawPolygon(outline);
  if (loops_can_be_seen(c, t.coil)) paint_coil(c, t);
  if (t.coil.pattern != CoilPattern::flat_coil && c.options.coils) paint_lines(c, t);
  // The head, where pipe enters: a filled dot.
  c.painter.setPen(Qt::NoPen);
  c.painter.setBrush(shown(c, t, c.look.header));
  c.painter.drawEllipse(c.at(t.head), 2.8 * c.look.line, 2.8 * c.look.line);
  c.labels.avoid(outline, true);
  tag(c, t);
}

// A drawn trench that the layout does not show, or not yet: where it is to be.
void paint_locked(PaintContext& c, const GivenTrench& locked) {
  const Polyline line = line_of(locked);
  const double long_ = length(line);
  if (!std::isfinite(long_) || long_ < kSamePlace) return;
  if (c.outcome != nullptr)
    for (const Trench& t : c.outcome->layout.trenches)
      if (middle_line(t) == line) return;
  c.painter.setPen(c.dashed(shown(c, c.look.trench), 1.2, {6, 3}));
  c.painter.setBrush(Qt::NoBrush);
  c.painter.drawPolygon(c.line(strip_along(line, c.plan.wishes.trench_width)));
  c.painter.setPen(Qt::NoPen);
  c.painter.setBrush(shown(c, c.look.header));
  c.painter.drawEllipse(c.at(line.front()), 2.8 * c.look.line, 2.8 * c.look.line);
}

}  // namespace

void paint_field(PaintContext& c) {
  for (const GivenTrench& t : c.plan.wishes.locked) paint_locked(c, t);
  if (c.outcome == nullptr) return;
  const Layout& layout = c.outcome->layout;
  const double width = c.plan.wishes.run_width;
  paint_conduit(c, layout.run.line, width);
  for (const Polyline& leg : layout.header.legs) paint_conduit(c, leg, width);
  for (const Trench& t : layout.trenches) paint_trench(c, t);
}

}  // namespace underlawn
