// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/height_tool.h"

#include "plan/edits.h"
#include "site/terrain.h"

namespace underlawn {

QString HeightTool::status() const {
  return tr("Spot height: click where it was measured, or type x,y and Enter; then F2 and its height.");
}

void HeightTool::place(Point p) {
  const double guess = Terrain(context_.plan().site.heights).height(p);
  const Plan plan = edit::with_height(context_.plan(), {p, guess});
  const auto& all = plan.site.heights;
  const auto there = std::ranges::find(all, p, &SpotHeight::at);
  if (there == all.end()) return context_.say(tr("That is not a place a height can have."));
  context_.commit(plan, tr("Draw spot height"));
  context_.pick({{Selected::Kind::height, static_cast<int>(there - all.begin())}});
}

void HeightTool::paint(const ToolPaint& p) const {
  const QPointF at = p.view.to_device(p.pointer.at);
  p.painter.setPen(QPen(p.look.selection, 2));
  p.painter.setBrush(Qt::NoBrush);
  p.painter.drawLine(at - QPointF(6, 0), at + QPointF(6, 0));
  p.painter.drawLine(at - QPointF(0, 6), at + QPointF(0, 6));
  p.painter.drawEllipse(at, 3, 3);
}

}  // namespace underlawn
