// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/measure_tool.h"

#include "base/quantity.h"
#include "base/say.h"
#include "plane/region.h"
#include "tools/gesture_paint.h"

namespace underlawn {

QString MeasureTool::first_hint() const {
  return tr("Measure: click from where. It catches corners, walls, trees and trench ends.");
}

QString MeasureTool::status() const {
  if (!busy()) return first_hint();
  const QString found = result(points()).join(QStringLiteral("   "));
  if (done_) return tr("%1   Click to measure anew, Esc to clear.").arg(found);
  return points().size() < 2 ? tr("Click to where.") : tr("%1   Click on, or Enter to end.").arg(found);
}

void MeasureTool::press(const Pointer& pointer) {
  place(pointer.at);
}

void MeasureTool::place(Point p) {
  if (done_) cancel();
  PathTool::place(p);
}

void MeasureTool::cancel() {
  done_ = false;
  PathTool::cancel();
}

void MeasureTool::step_back() {
  done_ = false;
  PathTool::step_back();
}

std::optional<Point> MeasureTool::from() const {
  return done_ ? std::nullopt : PathTool::from();
}

SnapTargets MeasureTool::targets() const {
  SnapTargets t = PathTool::targets();
  if (const Outcome* outcome = context_.outcome()) add_trenches(t, *outcome);
  return t;
}

QStringList MeasureTool::result(const Polyline& line) const {
  QStringList found;
  if (line.size() < 2) return found;
  found << tr("Distance %1").arg(context_.length_text(length(line)));
  if (line.size() < 3) return found;
  const auto ring = checked_ring(line, say("measured area"));
  if (ring)
    found << tr("Area %1").arg(QString::fromStdString(
        print_quantity(Quantity::area, area(*ring), context_.plan().units, Fineness::normal)));
  return found;
}

void MeasureTool::paint(const ToolPaint& p) const {
  Polyline line = points();
  if (!done_ && busy()) line.push_back(p.pointer.at);
  paint_drawn(p, points(), done_ ? std::nullopt : std::optional(p.pointer.at), points().size() > 2);
  const QStringList found = result(line);
  if (!found.isEmpty() && done_)
    paint_plate(p, p.view.to_device(line.back()) + QPointF(16, 64), found, p.look.text);
}

}  // namespace underlawn
