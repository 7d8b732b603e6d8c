// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/dimension_tool.h"

#include <cmath>

#include "base/quantity.h"
#include "plan/dimensions.h"
#include "tools/gesture_paint.h"

namespace underlawn {

QString DimensionTool::status() const {
  if (!from_)
    return tr(
        "Dimension: click from where. It catches corners, walls and trench ends. R measures straight, level "
        "or upright.");
  if (!to_) return tr("Click to where. R measures straight, level or upright.");
  return tr("Click where its line lies, or type how far off. R measures straight, level or upright.");
}

bool DimensionTool::key_press(QKeyEvent& key) {
  if (key.key() != Qt::Key_R || key.modifiers() != Qt::NoModifier) return false;
  way_ = static_cast<DimensionWay>((static_cast<int>(way_) + 1) % 3);
  return true;
}

void DimensionTool::place(Point p) {
  pointer_ = p;
  if (!from_) {
    from_ = p;
  } else if (!to_) {
    if (distance(*from_, p) < kSamePlace) return context_.say(tr("Point to another place."));
    to_ = p;
  } else {
    keep(through(p));
  }
}

Dimension DimensionTool::through(Point p) const {
  Plan alone;
  alone.dimensions = {{*from_, *to_, way_, 0, {}}};
  return edit::moved_dimension_part(std::move(alone), 0, 2, p).dimensions.front();
}

void DimensionTool::keep(Dimension d) {
  const Plan after = edit::with_dimension(context_.plan(), std::move(d));
  if (after == context_.plan())
    return context_.say(tr("Measured so its length is nothing. R measures another way."));
  cancel();
  const int index = static_cast<int>(after.dimensions.size()) - 1;
  context_.commit(after, tr("Draw a dimension"));
  context_.pick({{Selected::Kind::dimension, index}});
}

QString DimensionTool::take_text(const QString& typed, bool keep_it) {
  typed_.reset();
  if (typed.isEmpty()) return {};
  const auto off = parse_quantity(Quantity::length, typed.toStdString(), context_.plan().units);
  if (!off) return QString::fromStdString(off.error().message());
  Dimension d = through(pointer_);
  d.offset = d.offset < 0 ? -*off : *off;
  if (keep_it)
    keep(d);
  else
    typed_ = d.offset;
  return {};
}

void DimensionTool::cancel() {
  from_.reset();
  to_.reset();
  typed_.reset();
}

void DimensionTool::step_back() {
  typed_.reset();
  if (to_)
    to_.reset();
  else
    from_.reset();
}

std::optional<Point> DimensionTool::from() const {
  return to_ ? std::nullopt : from_;
}

SnapTargets DimensionTool::targets() const {
  SnapTargets t = Tool::targets();
  if (const Outcome* outcome = context_.outcome()) add_trenches(t, *outcome);
  return t;
}

void DimensionTool::paint(const ToolPaint& p) const {
  if (!from_) return;
  if (!to_) return paint_drawn(p, {*from_}, p.pointer.at, false);
  Dimension d = through(p.pointer.at);
  if (typed_) d.offset = *typed_;
  const auto line = line_of(d);
  if (!line) return paint_drawn(p, {*from_}, *to_, false);
  paint_drawn(p, {d.from, line->a, line->b, d.to}, std::nullopt, false);
  paint_plate(p, p.view.to_device(0.5 * (line->a + line->b)) + QPointF(8, -6),
              {context_.length_text(measured(d))}, p.look.text);
}

}  // namespace underlawn
