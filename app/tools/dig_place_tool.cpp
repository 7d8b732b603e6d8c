// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/dig_place_tool.h"

#include "dig/dig_ground.h"

namespace underlawn {

QString DigPlaceTool::title() const {
  return place_ == Place::access ? tr("Machine access") : tr("Pipe laydown");
}

QString DigPlaceTool::status() const {
  return place_ == Place::access ? tr("Machine access: click the lot line where machines come in.")
                                 : tr("Pipe laydown: click where pipe is laid down and coils are made.");
}

void DigPlaceTool::place(Point p) {
  Plan plan = context_.plan();
  if (place_ == Place::access && plan.site.lot.size() < 3)
    return context_.say(tr("There is no lot line to come over. Draw it first (L)."));
  (place_ == Place::access ? plan.dig.access : plan.dig.laydown) = steered(p);
  context_.commit(std::move(plan), title());
  context_.back_to_select();
}

Point DigPlaceTool::steered(Point p) const {
  if (place_ == Place::laydown) return p;
  bool over_drive = false;
  return access_of(context_.plan().site, p, over_drive).value_or(p);
}

void DigPlaceTool::paint(const ToolPaint& p) const {
  p.painter.setPen(QPen(p.look.selection, 2));
  p.painter.setBrush(p.look.ground);
  p.painter.drawEllipse(p.view.to_device(p.pointer.at), 6, 6);
}

}  // namespace underlawn
