// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/clearance_tool.h"

#include <limits>

#include "layout/given.h"
#include "plane/region.h"
#include "plane/strip.h"
#include "tools/gesture_paint.h"

namespace underlawn {

namespace {

using Kind = Selected::Kind;

constexpr double kHitReach = 8;  // px

std::size_t legs(const Polyline& line, bool closed) {
  return line.size() < 2 ? 1 : closed ? line.size() : line.size() - 1;
}

Segment leg(const Polyline& line, std::size_t i) {
  return {line[i], line[(i + 1) % line.size()]};
}

std::optional<Point> crossing(const Segment& a, const Segment& b) {
  const Point u = a.b - a.a, v = b.b - b.a;
  const double across = cross(u, v);
  if (across == 0) return std::nullopt;
  const double s = cross(b.a - a.a, v) / across, t = cross(b.a - a.a, u) / across;
  if (s < 0 || s > 1 || t < 0 || t > 1) return std::nullopt;
  return a.a + s * u;
}

Nearest nearer(const Nearest& x, Point a, Point b) {
  const double apart = distance(a, b);
  return apart < x.apart ? Nearest{a, b, apart} : x;
}

}  // namespace

Nearest nearest_places(const Polyline& a, bool closed_a, const Polyline& b, bool closed_b) {
  if (closed_a && contains(a, b.front())) return {b.front(), b.front(), 0};
  if (closed_b && contains(b, a.front())) return {a.front(), a.front(), 0};
  Nearest best{{}, {}, std::numeric_limits<double>::infinity()};
  for (std::size_t i = 0; i < legs(a, closed_a); ++i)
    for (std::size_t j = 0; j < legs(b, closed_b); ++j) {
      const Segment s = leg(a, i), t = leg(b, j);
      if (const auto at = crossing(s, t)) return {*at, *at, 0};
      for (Point p : {t.a, t.b}) best = nearer(best, nearest_on(s, p), p);
      for (Point p : {s.a, s.b}) best = nearer(best, p, nearest_on(t, p));
    }
  return best;
}

QString ClearanceTool::status() const {
  if (!first_) return tr("Clearance: click a thing, a trench or a lot edge, then another one.");
  if (!second_) return tr("From %1: point at another thing, or click it.").arg(first_->name);
  return done_ ? tr("%1   Click to measure anew, Esc to clear.").arg(words()) : words();
}

QString ClearanceTool::words() const {
  const Nearest n = nearest_places(first_->line, first_->closed, second_->line, second_->closed);
  if (n.apart <= 0) return tr("%1 and %2 meet.").arg(first_->name, second_->name);
  return tr("%1 to %2: %3").arg(first_->name, second_->name, context_.length_text(n.apart));
}

std::optional<ClearanceTool::Shape> ClearanceTool::shape_of_thing(const Selected& what) const {
  const Plan& plan = context_.plan();
  const Outcome* outcome = context_.outcome();
  if (what.kind == Kind::feature) {
    const Feature& f = *find_feature(plan.site, what.id);
    return Shape{QString::fromStdString(display_name(f)), f.points, shape_of(f.kind) == FeatureShape::area};
  }
  if (what.kind == Kind::entry) return Shape{tr("Entry point"), {plan.site.entry->at}, false};
  if (what.kind == Kind::locked) {
    const Polyline line = underlawn::line_of(plan.wishes.locked[static_cast<std::size_t>(what.id)]);
    return Shape{tr("Drawn trench %1").arg(what.id + 1), strip_along(line, plan.wishes.trench_width), true};
  }
  if (what.kind == Kind::lot_edge) {
    const Ring lot = lot_ring(plan.site);
    const Segment edge = leg(lot, static_cast<std::size_t>(what.index));
    return Shape{tr("Lot edge %1").arg(what.index + 1), {edge.a, edge.b}, false};
  }
  if (outcome == nullptr) return std::nullopt;
  if (what.kind == Kind::trench)
    for (const Trench& t : outcome->layout.trenches)
      if (t.number == what.id) return Shape{tr("Trench %1").arg(t.number), floor_of(t), true};
  if (what.kind == Kind::run && outcome->layout.run.line.size() > 1)
    return Shape{tr("Supply run (middle line)"), outcome->layout.run.line, false};
  return std::nullopt;
}

std::optional<ClearanceTool::Shape> ClearanceTool::shape_at(Point p) const {
  for (const Selected& what : under(p, kHitReach))
    if (auto shape = shape_of_thing(what); shape && !shape->line.empty()) return shape;
  return std::nullopt;
}

void ClearanceTool::press(const Pointer& pointer) {
  place(pointer.raw);
}

void ClearanceTool::place(Point p) {
  const auto shape = shape_at(p);
  if (!shape) return context_.say(tr("There is nothing here to measure to."));
  if (!first_ || done_) {
    first_ = shape;
    second_.reset();
    done_ = false;
  } else if (*shape != *first_) {
    second_ = shape;
    done_ = true;
  }
}

void ClearanceTool::move(const Pointer& pointer) {
  hovered_ = shape_at(pointer.raw);
  if (!first_ || done_) return;
  second_ = hovered_ && *hovered_ != *first_ ? hovered_ : std::nullopt;
}

void ClearanceTool::cancel() {
  first_.reset();
  second_.reset();
  hovered_.reset();
  done_ = false;
}

void ClearanceTool::paint(const ToolPaint& p) const {
  const auto stroke = [&](const Shape& s) {
    QPolygonF device;
    for (Point q : s.line) device << p.view.to_device(q);
    if (s.closed) device << device.front();
    p.painter.setPen(QPen(p.look.selection, 2.5));
    p.painter.setBrush(Qt::NoBrush);
    if (device.size() == 1)
      p.painter.drawEllipse(device.front(), 9, 9);
    else
      p.painter.drawPolyline(device);
  };
  p.painter.save();
  if (hovered_ && !done_) stroke(*hovered_);
  if (first_) stroke(*first_);
  if (first_ && second_) {
    stroke(*second_);
    const Nearest n = nearest_places(first_->line, first_->closed, second_->line, second_->closed);
    const QPointF a = p.view.to_device(n.a), b = p.view.to_device(n.b);
    p.painter.setPen(QPen(p.look.snap, 2));
    p.painter.setBrush(p.look.snap);
    p.painter.drawLine(a, b);
    p.painter.drawEllipse(a, 3, 3);
    p.painter.drawEllipse(b, 3, 3);
    paint_plate(p, 0.5 * (a + b) + QPointF(10, -6),
                {n.apart > 0 ? context_.length_text(n.apart) : tr("They meet")}, p.look.text);
  }
  p.painter.restore();
}

}  // namespace underlawn
