// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/parallel_tool.h"

#include <cmath>
#include <limits>

#include "base/quantity.h"
#include "layout/given.h"
#include "plan/edits.h"
#include "plane/parallel.h"
#include "plane/region.h"
#include "tools/gesture_paint.h"

namespace underlawn {

namespace {

using Kind = Selected::Kind;

constexpr double kHitReach = 9;  // px

// The leg of the line nearest to p.
std::size_t nearest_leg(const Polyline& line, bool closed, Point p) {
  const std::size_t legs = closed ? line.size() : line.size() - 1;
  std::size_t best = 0;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < legs; ++i) {
    const double away = distance(Segment{line[i], line[(i + 1) % line.size()]}, p);
    if (away >= least) continue;
    least = away;
    best = i;
  }
  return best;
}

}  // namespace

QString ParallelTool::status() const {
  if (!source_)
    return tr(
        "Parallel: click a lot edge for an easement along it, a line for one beside it, an area for one "
        "round "
        "or inside it.");
  return tr("Point to the side and type the distance, Enter; or click. Esc drops it.");
}

std::optional<ParallelTool::Source> ParallelTool::source_at(Point p) const {
  const Plan& plan = context_.plan();
  for (const Selected& what : under(p, kHitReach, false)) {
    if (what.kind == Kind::lot_edge) {
      const Ring lot = lot_ring(plan.site);
      const auto i = static_cast<std::size_t>(what.index);
      return Source{what, {lot[i], lot[(i + 1) % lot.size()]}, false};
    }
    if (what.kind == Kind::locked)
      return Source{what, line_of(plan.wishes.locked[static_cast<std::size_t>(what.id)]), false};
    if (what.kind != Kind::feature) continue;
    const Feature& f = *find_feature(plan.site, what.id);
    if (shape_of(f.kind) == FeatureShape::line && f.points.size() >= 2) return Source{what, f.points, false};
    // An area is meant where its outline is near: what lies in it is more often meant inside.
    if (shape_of(f.kind) != FeatureShape::area || f.points.size() < 3) continue;
    const std::size_t i = nearest_leg(f.points, true, p);
    if (distance(Segment{f.points[i], f.points[(i + 1) % f.points.size()]}, p) <= context_.reach(kHitReach))
      return Source{what, f.points, true};
  }
  return std::nullopt;
}

double ParallelTool::signed_distance(Point p) const {
  const Polyline& line = source_->line;
  const std::size_t i = nearest_leg(line, source_->closed, p);
  const Segment leg{line[i], line[(i + 1) % line.size()]};
  if (source_->closed) return distance(leg, p) * (contains(line, p) ? -1 : 1);
  if (source_->what.kind == Kind::lot_edge) return std::abs(dot(p - leg.a, left_normal(unit(leg.b - leg.a))));
  const double left = dot(p - leg.a, left_normal(unit(leg.b - leg.a)));
  return left < 0 ? -distance(leg, p) : distance(leg, p);
}

std::optional<Polyline> ParallelTool::shape(double by) const {
  Polyline line;
  if (source_->what.kind == Kind::lot_edge)
    line = strip_inside(lot_ring(context_.plan().site), static_cast<std::size_t>(source_->what.index), by);
  else
    line = source_->closed ? parallel_ring(source_->line, by) : parallel_line(source_->line, by);
  return line.size() < 2 ? std::nullopt : std::optional(line);
}

// Beside a house or along a lot edge there is no second house or lot: what is drawn is ground to keep clear.
std::optional<Feature> ParallelTool::drawn(double by) const {
  const auto points = shape(by);
  if (!points) return std::nullopt;
  Feature f;
  if (source_->what.kind == Kind::lot_edge) {
    f.kind = FeatureKind::easement;
    f.may_cross = false;
  } else if (const Feature* like = find_feature(context_.plan().site, source_->what.id)) {
    f = *like;
    f.name.clear();
    f.note.clear();
    if (f.kind == FeatureKind::house) {
      f = Feature{};
      f.kind = FeatureKind::no_dig;
      f.may_cross = false;
    }
  }
  f.id = edit::next_feature_id(context_.plan());
  f.points = *points;
  return f;
}

void ParallelTool::press(const Pointer& pointer) {
  if (source_) return place(pointer.at);
  source_ = source_at(pointer.raw);
  if (!source_) context_.say(tr("There is no line or outline here. Click on one."));
}

void ParallelTool::move(const Pointer& pointer) {
  pointer_ = pointer.at;
  hovered_ = source_ ? std::nullopt : source_at(pointer.raw);
}

void ParallelTool::place(Point p) {
  if (!source_) {
    source_ = source_at(p);
    return;
  }
  pointer_ = p;
  keep(signed_distance(p));
}

void ParallelTool::keep(double by) {
  if (std::abs(by) < kSamePlace) return context_.say(tr("Point to one side, or type a distance."));
  const Plan& plan = context_.plan();
  Plan after = plan;
  std::optional<Selected> made;
  if (source_->what.kind == Kind::locked) {
    GivenTrench t = plan.wishes.locked[static_cast<std::size_t>(source_->what.id)];
    if (const auto line = shape(by)) {
      t.head = line->front();
      t.end = line->back();
      t.bends.assign(line->begin() + 1, line->end() - 1);
      made = Selected{Kind::locked, static_cast<int>(plan.wishes.locked.size())};
      after = edit::with_locked(plan, std::move(t));
    }
  } else if (auto f = drawn(by)) {
    made = Selected{Kind::feature, f->id};
    after = edit::with_feature(plan, std::move(*f));
  }
  if (after == plan) return context_.say(tr("Nothing is left at that distance. Come nearer."));
  const QString along = context_.length_text(std::abs(by));
  cancel();
  context_.commit(std::move(after), tr("Draw a parallel at %1").arg(along));
  if (made) context_.pick({*made});
}

QString ParallelTool::take_text(const QString& typed, bool keep_it) {
  typed_.reset();
  if (typed.isEmpty()) return {};
  const auto by = parse_quantity(Quantity::length, typed.toStdString(), context_.plan().units);
  if (!by) return QString::fromStdString(by.error().message());
  const double side = signed_distance(pointer_) < 0 ? -1 : 1;
  if (keep_it)
    keep(side * *by);
  else
    typed_ = side * *by;
  return {};
}

void ParallelTool::cancel() {
  source_.reset();
  hovered_.reset();
  typed_.reset();
}

void ParallelTool::paint(const ToolPaint& p) const {
  const auto stroke = [&](const Polyline& line, bool closed, const QPen& pen) {
    QPolygonF device;
    for (Point q : line) device << p.view.to_device(q);
    if (closed && !device.isEmpty()) device << device.front();
    p.painter.setPen(pen);
    p.painter.setBrush(Qt::NoBrush);
    p.painter.drawPolyline(device);
  };
  p.painter.save();
  if (hovered_) stroke(hovered_->line, hovered_->closed, QPen(p.look.selection, 3));
  if (source_) {
    stroke(source_->line, source_->closed, QPen(p.look.selection, 3));
    const double by = typed_ ? *typed_ : signed_distance(p.pointer.at);
    const bool area = source_->closed || source_->what.kind == Kind::lot_edge;
    if (const auto line = shape(by)) stroke(*line, area, QPen(p.look.selection, 2, Qt::DashLine));
    if (!typed_)
      paint_plate(p, p.view.to_device(p.pointer.at) + QPointF(16, 40), {context_.length_text(std::abs(by))},
                  p.look.text);
  }
  p.painter.restore();
}

}  // namespace underlawn
