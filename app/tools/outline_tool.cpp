// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/outline_tool.h"

#include <QLineF>
#include <QRegularExpression>

#include "base/quantity.h"
#include "plane/region.h"
#include "tools/course.h"
#include "tools/gesture_paint.h"

namespace underlawn {

namespace {

constexpr double kDragPixels = 8;

}  // namespace

QString OutlineTool::first_hint() const {
  if (rectangle_)
    return tr("%1: a rectangle. Click one end of a side, or drag across. R makes it a free outline.")
        .arg(title());
  return tr("%1: a free outline. Click its first corner, or type it as 0,0. R makes it a rectangle.")
      .arg(title());
}

QString OutlineTool::status() const {
  if (!rectangle_ || points().empty()) return PathTool::status();
  if (points().size() == 1)
    return tr(
        "Other end of the side: click, or type its length, or the size like 18 x 40. R for a free outline.");
  return tr("Depth: click, or type it. Backspace goes back, Esc drops it.");
}

bool OutlineTool::key_press(QKeyEvent& key) {
  if (key.key() != Qt::Key_R || key.modifiers() != Qt::NoModifier || (busy() && points().size() > 2))
    return PathTool::key_press(key);
  rectangle_ = !rectangle_;
  return true;
}

void OutlineTool::press(const Pointer& pointer) {
  const bool first = points().empty();
  place(pointer.at);
  if (first && rectangle_) pressed_ = pointer;
}

void OutlineTool::release(const Pointer& pointer) {
  const auto pressed = std::exchange(pressed_, std::nullopt);
  if (!pressed || !rectangle_ || points().size() != 1) return;
  if (QLineF(pressed->device, pointer.device).length() < kDragPixels) return;
  const Ring ring = by_corners(pointer.at);
  cancel();
  if (ring.empty())
    return context_.say(tr("That rectangle has no area. Drag across, or click the ends of a side."));
  keep(ring);
}

void OutlineTool::double_click(const Pointer& pointer) {
  if (rectangle_)
    press(pointer);
  else
    PathTool::double_click(pointer);
}

void OutlineTool::place(Point p) {
  typed_.reset();
  if (!wants_depth()) return PathTool::place(p);
  const Ring ring = by_depth(p);
  if (ring.empty())
    return context_.say(tr("The depth must be more than nothing. Point to one side of the line."));
  cancel();
  keep(ring);
}

QString OutlineTool::take_text(const QString& typed, bool keep_it) {
  typed_.reset();
  typed_size_ = false;
  if (typed.isEmpty()) return {};
  static const QRegularExpression times(QStringLiteral("[xX×]"));
  const QStringList sides = typed.split(times);
  if (sides.size() == 2) return take_size(sides[0], sides[1], keep_it);
  const auto end = typed_place(
      typed.toStdString(), {points().front(), toward_, context_.plan().site.north, context_.plan().units});
  if (!end) return QString::fromStdString(end.error().message());
  if (keep_it)
    place(*end);
  else
    typed_ = *end;
  return {};
}

// To the right and up, unless a side is typed with a minus.
QString OutlineTool::take_size(const QString& wide, const QString& deep, bool keep_it) {
  const UnitSystem units = context_.plan().units;
  const auto w = parse_quantity(Quantity::length, wide.toStdString(), units);
  if (!w) return QString::fromStdString(w.error().message());
  const auto d = parse_quantity(Quantity::length, deep.toStdString(), units);
  if (!d) return QString::fromStdString(d.error().message());
  const Point corner = points().front() + Point{*w, *d};
  const Ring ring = by_corners(corner);
  if (ring.empty()) return tr("That rectangle has no area. Type two sides that are not 0, like 18 x 40.");
  if (keep_it) {
    cancel();
    keep(ring);
  } else {
    typed_ = corner;
    typed_size_ = true;
  }
  return {};
}

void OutlineTool::cancel() {
  pressed_.reset();
  typed_.reset();
  typed_size_ = false;
  PathTool::cancel();
}

void OutlineTool::finish() {
  if (rectangle_ && busy())
    return context_.say(points().size() == 1 ? tr("Point to the other end of the side, or type its length.")
                                             : tr("Point to the depth, or type it."));
  PathTool::finish();
}

Point OutlineTool::steered(Point p) const {
  if (!wants_depth()) return p;
  const Point across = left_normal(unit(points()[1] - points()[0]));
  return points()[1] + dot(p - points()[1], across) * across;
}

Ring OutlineTool::by_depth(Point p) const {
  const Point depth = steered(p) - points()[1];
  if (norm(depth) < kSamePlace) return {};
  return {points()[0], points()[1], points()[1] + depth, points()[0] + depth};
}

Ring OutlineTool::by_corners(Point p) const {
  const Point a = points().front();
  if (std::abs(p.x - a.x) < kSamePlace || std::abs(p.y - a.y) < kSamePlace) return {};
  return {a, {p.x, a.y}, p, {a.x, p.y}};
}

void OutlineTool::paint(const ToolPaint& p) const {
  Ring shape;
  if (wants_depth()) shape = by_depth(p.pointer.at);
  const bool dragged = pressed_ && QLineF(pressed_->device, p.pointer.device).length() >= kDragPixels;
  if (dragged && points().size() == 1) shape = by_corners(p.pointer.at);
  if (typed_ && typed_size_ && points().size() == 1) shape = by_corners(*typed_);
  if (shape.empty()) return paint_drawn(p, points(), typed_.value_or(p.pointer.at), !rectangle_);
  shape.push_back(shape.front());
  paint_drawn(p, shape, std::nullopt, false);
}

}  // namespace underlawn
