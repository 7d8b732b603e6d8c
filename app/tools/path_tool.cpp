// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/path_tool.h"

#include "tools/gesture_paint.h"

namespace underlawn {

QString PathTool::status() const {
  if (points_.empty()) return first_hint();
  if (points_.size() < least())
    return tr(
        "Click the next point or type it: 31.5, 31.5<90, 120 N45E, @10,5. Backspace takes the last back, "
        "Esc drops it.");
  return closes()
             ? tr("Next point, or close: click the first point, Enter or C. Backspace takes the last back.")
             : tr("Next point, or end: double click or Enter (Ctrl+Enter: the typed one is the last). "
                  "Backspace takes "
                  "the last back.");
}

bool PathTool::key_press(QKeyEvent& key) {
  if (key.key() != Qt::Key_C || key.modifiers() != Qt::NoModifier || points_.size() < least() || !closes())
    return false;
  finish();
  return true;
}

void PathTool::place(Point p) {
  if (closes() && points_.size() >= least() && distance(p, points_.front()) < kSamePlace) return finish();
  if (!points_.empty() && distance(p, points_.back()) < kSamePlace) return;
  points_.push_back(p);
}

void PathTool::step_back() {
  if (!points_.empty()) points_.pop_back();
}

void PathTool::finish() {
  if (points_.empty()) return;
  if (points_.size() < least()) {
    context_.say(
        closes() ? tr("An area takes three corners at least; here are %1. Go on, or Esc.").arg(points_.size())
                 : tr("A line takes two points at least. Go on, or Esc."));
    return;
  }
  keep(std::exchange(points_, {}));
}

std::optional<Point> PathTool::from() const {
  return points_.empty() ? std::nullopt : std::optional(points_.back());
}

SnapTargets PathTool::targets() const {
  SnapTargets t = Tool::targets();
  add_drawn(t, points_);
  return t;
}

void PathTool::paint(const ToolPaint& p) const {
  paint_drawn(p, points_, p.pointer.at, closes());
}

}  // namespace underlawn
