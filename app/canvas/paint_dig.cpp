// SPDX-License-Identifier: GPL-3.0-or-later
// How it is dug: heaps at their real width, steps in their order with the way each is dug, the machine's
// ways, ladders, where pipe is laid down.
#include <QObject>
#include <algorithm>
#include <cmath>

#include "canvas/paint_context.h"
#include "dig/dig_order.h"
#include "dig/dig_words.h"
#include "field/trench.h"
#include "plane/region.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

const DigOrder* order_of(const PaintContext& c) {
  return c.outcome == nullptr ? nullptr : c.outcome->order.get();
}

QColor shown(const PaintContext& c, const QColor& colour) {
  return c.options.stale ? c.look.stale : colour;
}

void paint_heap(PaintContext& c, const DigStep& step) {
  QVector<QPolygonF> rings;
  for (const Ring& ring : step.spoil) rings.push_back(c.line(ring));
  QColor fill = shown(c, c.look.trench);
  fill.setAlphaF(c.look.dark ? 0.20F : 0.13F);
  c.painter.setPen(c.pen(shown(c, c.look.trench), 0.8, Qt::DotLine));
  c.painter.setBrush(fill);
  for (const QPolygonF& ring : rings) c.painter.drawPolygon(ring);
  QColor line = shown(c, c.look.trench);
  line.setAlphaF(0.45F);
  c.hatch(rings, 9, 20, c.pen(line, 0.5));
}

// An open arrow head at `tip`.
void paint_arrow(PaintContext& c, QPointF tip, QPointF from, double size, const QPen& pen) {
  const double turn = std::atan2(tip.y() - from.y(), tip.x() - from.x());
  c.painter.setPen(pen);
  c.painter.setBrush(Qt::NoBrush);
  const auto wing = [&](double side) {
    return tip - size * QPointF(std::cos(turn + side), std::sin(turn + side));
  };
  c.painter.drawPolyline(QPolygonF({wing(0.5), tip, wing(-0.5)}));
}

// Along the middle of the step, three arrows the way it is dug.
void paint_direction(PaintContext& c, const DigStep& step) {
  const double long_ = length(step.line);
  if (c.view.to_device(long_) < 24 * c.look.line) return;
  const QPen pen = c.pen(shown(c, c.look.ghost), 2.2);
  for (double share : {0.25, 0.6, 0.9})
    paint_arrow(c, c.at(place_along(step.line, share * long_).at),
                c.at(place_along(step.line, (share - 0.05) * long_).at), 10 * c.look.line, pen);
}

// From where it stands after the step before, at the dot.
void paint_way(PaintContext& c, const Polyline& way, bool first) {
  if (way.size() < 2) return;
  const QPolygonF line = c.line(way);
  c.labels.avoid(line);
  if (!first) {
    c.painter.setPen(Qt::NoPen);
    c.painter.setBrush(shown(c, c.look.ghost));
    c.painter.drawEllipse(line.front(), 2.6 * c.look.line, 2.6 * c.look.line);
  }
  c.painter.setBrush(Qt::NoBrush);
  c.painter.setPen(c.dashed(shown(c, c.look.ghost), first ? 2.0 : 1.2, {4, 3}));
  c.painter.drawPolyline(line);
  if (line.size() > 1 && QLineF(line[line.size() - 2], line.back()).length() > 6 * c.look.line)
    paint_arrow(c, line.back(), line[line.size() - 2], 6 * c.look.line, c.pen(shown(c, c.look.ghost), 1.6));
}

// Of trucks: dots, so that it is told from the machine's dashes in grey too; dots and dashes by turns when
// they bring back, over what is filled by then.
void paint_truck_way(PaintContext& c, const Polyline& way, bool back) {
  if (way.size() < 2) return;
  const QPolygonF line = c.line(way);
  c.labels.avoid(line);
  c.painter.setBrush(Qt::NoBrush);
  QPen pen = c.dashed(shown(c, c.look.ghost), back ? 1.4 : 2.2,
                      back ? QVector<qreal>{6, 4, 0.1, 4} : QVector<qreal>{0.1, 5});
  pen.setCapStyle(Qt::RoundCap);
  c.painter.setPen(pen);
  c.painter.drawPolyline(line);
  if (QLineF(line[line.size() - 2], line.back()).length() > 4 * c.look.line)
    paint_arrow(c, line.back(), line[line.size() - 2], 8 * c.look.line, c.pen(shown(c, c.look.ghost), 1.8));
}

// No larger than the trench that it stands in, where that can still be told.
void paint_ladder(PaintContext& c, Point place, double trench_width) {
  const QPointF at = c.at(place);
  const double s = std::clamp(0.6 * c.view.to_device(trench_width), 3.2 * c.look.line, 5.5 * c.look.line);
  c.labels.keep_off(QPolygonF(QRectF(at - QPointF(0.8 * s, 1.6 * s), at + QPointF(0.8 * s, 1.6 * s))));
  c.painter.setPen(c.pen(shown(c, c.look.text), 1.1));
  for (double x : {-0.6, 0.6})
    c.painter.drawLine(at + QPointF(x * s, -1.4 * s), at + QPointF(x * s, 1.4 * s));
  for (double y : {-0.9, 0.0, 0.9})
    c.painter.drawLine(at + QPointF(-0.6 * s, y * s), at + QPointF(0.6 * s, y * s));
}

// Heads, and what joins them, are what the crew looks for: no label lies on them.
void keep_heads_clear(PaintContext& c, const DigOrder& order) {
  const double r = 4 * c.look.line;
  for (const Trench& t : c.outcome->layout.trenches) {
    const QPointF head = c.at(t.head);
    c.labels.keep_off(QPolygonF(QRectF(head.x() - r, head.y() - r, 2 * r, 2 * r)));
  }
  for (const DigStep& step : order.steps) {
    if (step.kind == DigKind::trench) continue;
    const double width = std::max(step.width, 6 * c.look.line / c.view.scale);
    for (std::size_t i = 1; i < step.line.size(); ++i)
      if (distance(step.line[i - 1], step.line[i]) > kSamePlace)
        c.labels.keep_off(c.line(rectangle_along(Segment{step.line[i - 1], step.line[i]}, width)));
  }
}

bool on_a_building(const PaintContext& c, QPointF place) {
  return std::ranges::any_of(c.plan.site.features, [&](const Feature& f) {
    return f.kind == FeatureKind::house && f.points.size() > 2 &&
           c.line(f.points).containsPoint(place, Qt::OddEvenFill);
  });
}

bool meets_a_building(const PaintContext& c, QPointF place, QSizeF size) {
  const QRectF text(place - QPointF(size.width(), size.height()) / 2, size);
  return std::ranges::any_of(c.plan.site.features, [&](const Feature& f) {
    return f.kind == FeatureKind::house && f.points.size() > 2 &&
           c.line(f.points).intersects(QPolygonF(text));
  });
}

// A number on a coil trench is read as that trench's.
bool on_a_trench(const PaintContext& c, QPointF place, double wide, double high) {
  const QRectF tag(place.x() - wide / 2, place.y() - high / 2, wide, high);
  return std::ranges::any_of(c.outcome->layout.trenches, [&](const Trench& t) {
    return c.line(strip_along(middle_line(t), t.width)).intersects(QPolygonF(tag));
  });
}

// Beside header or run: on either side, from where it is begun on, on no building and no coil trench.
QVector<QPointF> places_beside(const PaintContext& c, const DigStep& step, double em, double wide) {
  QVector<QPointF> places;
  const double long_ = length(step.line);
  const double half = std::max(c.view.to_device(step.width) / 2, 3 * c.look.line);
  for (double share : {0.15, 0.35, 0.5, 0.7, 0.85})
    for (double side : {1.0, -1.0}) {
      const QPointF on = c.at(place_along(step.line, share * long_).at);
      const QPointF next = c.at(place_along(step.line, std::min(share + 0.02, 1.0) * long_).at);
      const QLineF way(on, next);
      if (way.length() < 1e-6) continue;
      const QPointF across = side * QPointF(way.dy(), -way.dx()) / way.length();
      // A tag is wider than high: what lies beside it has to be farther off than what lies over it.
      const double reach = std::abs(across.x()) * wide / 2 + std::abs(across.y()) * 0.7 * em;
      const QPointF place = on + (half + reach + 0.25 * em) * across;
      if (!on_a_building(c, place) && !on_a_trench(c, place, wide, 1.4 * em)) places.push_back(place);
    }
  return places;
}

// Its place in the order, where it is begun; hollow: its spoil is trucked off. On a coil trench, beside
// header and run, and with a leader where these are short.
void tag_step(PaintContext& c, const DigStep& step, int number) {
  if (!c.options.labels) return;
  Label label;
  label.text = QString::fromStdString(step_numeral(number));
  // On paper the steps are listed beside the drawing.
  if (!c.options.sheet && step.kind != DigKind::trench)
    label.text += "  " + QString::fromStdString(step_name(step));
  label.font = c.font(1.0, QFont::Bold);
  label.tag = TagShape::square;
  label.tag_line = shown(c, step.no_room.empty() ? c.look.ghost : c.look.error);
  label.tag_fill = step.hauled ? c.look.ground : label.tag_line;
  label.colour = step.hauled ? label.tag_line : c.look.ground;
  label.rank = 1;
  label.must = true;
  const double long_ = length(step.line), em = label.font.pixelSize();
  const double wide = std::max(text_size(label.text, label.font).width() + 0.6 * em, 1.4 * em);
  if (step.kind == DigKind::trench) {
    // Off its ends: a coil trench's head is a dot there, and other lines come in.
    const double off = std::min((0.5 * wide + 0.6 * em) / c.view.scale, 0.3 * long_);
    for (double share : {0.0, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7})
      label.places.push_back(c.at(place_along(step.line, off + share * (long_ - 2 * off)).at));
  } else {
    label.places = places_beside(c, step, em, wide);
  }
  if (c.view.to_device(long_) > 6 * em && !label.places.isEmpty()) return c.labels.add(std::move(label));
  label.anchor = c.at(place_along(step.line, 0.3 * long_).at);
  for (double away : {1.6, 2.6, 3.6})
    for (int i = 0; i < 8; ++i) {
      const QPointF place =
          label.anchor + away * em * QPointF(std::cos(i * M_PI / 4), std::sin(i * M_PI / 4));
      if (!on_a_trench(c, place, wide, 1.4 * em)) label.places.push_back(place);
    }
  if (label.places.isEmpty()) label.places = {label.anchor};
  label.leader = true;
  label.leader_from = 0.9 * label.font.pixelSize();
  c.labels.add(std::move(label));
}

// In the middle of the circle round it, if any has room, else beside it.
void name_place(PaintContext& c, Point place, const QString& text, const QColor& colour, double inside = 0) {
  if (!c.options.labels) return;
  Label label;
  label.text = text;
  label.font = c.font(0.9);
  label.colour = shown(c, colour);
  label.rank = 3;
  label.anchor = c.at(place);
  const double width = text_size(text, label.font).width();
  if (width > 1.8 * inside && width < 2.4 * inside) label.font = c.font(0.9 * 1.8 * inside / width);
  if (width < 2.4 * inside) label.places.push_back(label.anchor);
  label.thing = QRectF(label.anchor - QPointF(inside, inside), QSizeF(2 * inside, 2 * inside));
  label.leader = true;
  label.leader_from = 0.9 * label.font.pixelSize();
  const double reach = std::max(10 * c.look.line, inside);
  label.places += places_around(label.anchor, {reach, reach}, text, label.font);
  const QVector<QPointF> all = label.places;
  const QSizeF size = text_size(text, label.font);
  label.places.removeIf([&](QPointF p) { return meets_a_building(c, p, size); });
  if (label.places.isEmpty()) label.places = all;
  c.labels.add(std::move(label));
}

void paint_laydown(PaintContext& c, const DigOrder& order) {
  if (!order.laydown) return;
  const double r = c.view.to_device(order.laydown_radius);
  c.painter.setPen(c.dashed(shown(c, c.look.coil), 1.2, {3, 2}));
  c.painter.setBrush(Qt::NoBrush);
  c.painter.drawEllipse(c.at(*order.laydown), r, r);
  name_place(c, *order.laydown, QObject::tr("Pipe, racks"), c.look.coil, r);
}

void paint_access(PaintContext& c, const DigOrder& order) {
  if (!order.access) return;
  const QPointF at = c.at(*order.access);
  c.painter.setPen(Qt::NoPen);
  c.painter.setBrush(shown(c, c.look.ghost));
  c.painter.drawEllipse(at, 4.5 * c.look.line, 4.5 * c.look.line);
  name_place(c, *order.access, QObject::tr("Machines in"), c.look.ghost);
}

// Beside its middle, where it is dug in parts.
void name_piece(PaintContext& c, const DigStep& step) {
  const double long_ = length(step.line);
  Label label;
  label.text = QString::fromStdString(step_name(step));
  label.font = c.font(0.9, QFont::DemiBold);
  label.colour = c.look.run;
  label.rank = 4;
  label.anchor = c.at(place_along(step.line, long_ / 2).at);
  label.leader = true;
  label.leader_from = 2.2 * label.font.pixelSize();
  for (double share : {0.5, 0.3, 0.7})
    label.places += places_around(c.at(place_along(step.line, share * long_).at),
                                  {5 * c.look.line, 5 * c.look.line}, label.text, label.font, 2);
  c.labels.add(std::move(label));
}

}  // namespace

// Header and run by the names of the order of digging.
void paint_piece_names(PaintContext& c) {
  const DigOrder* order = order_of(c);
  if (order == nullptr || !c.options.labels) return;
  for (const DigStep& step : order->steps)
    if (step.kind != DigKind::trench && step.part > 0) name_piece(c, step);
}

void paint_spoil(PaintContext& c) {
  const DigOrder* order = order_of(c);
  if (order == nullptr) return;
  for (const DigStep& step : order->steps) paint_heap(c, step);
  paint_laydown(c, *order);
}

void paint_dig(PaintContext& c) {
  const DigOrder* order = order_of(c);
  if (order == nullptr) return;
  for (std::size_t i = 0; i < order->steps.size(); ++i) paint_way(c, order->steps[i].way, i == 0);
  paint_way(c, order->way_out, false);
  for (const DigStep& step : order->steps) {
    paint_truck_way(c, step.truck_way, false);
    if (step.fill_way != step.truck_way) paint_truck_way(c, step.fill_way, true);
  }
  keep_heads_clear(c, *order);
  int number = 0;
  for (const DigStep& step : order->steps) {
    paint_direction(c, step);
    for (Point ladder : step.ladders) paint_ladder(c, ladder, step.width);
    tag_step(c, step, ++number);
  }
  paint_access(c, *order);
}

}  // namespace underlawn
