// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/trench_tool.h"

#include "layout/given.h"
#include "plan/edits.h"
#include "plane/strip.h"
#include "tools/gesture_paint.h"

namespace underlawn {

// Back where it came from no trench can go on: such a click is a slip.
void TrenchTool::place(Point p) {
  Polyline on = points();
  on.push_back(p);
  if (on.size() > 2 && distance(p, on[on.size() - 2]) > kSamePlace &&
      turn_at(on, on.size() - 2) > kSharpestTurn)
    return context_.say(tr("A trench cannot turn right back on itself. Click another point, or Esc."));
  PathTool::place(p);
}

void TrenchTool::keep(std::vector<Point> points) {
  GivenTrench t;
  t.head = points.front();
  t.end = points.back();
  t.bends.assign(points.begin() + 1, points.end() - 1);
  const int index = static_cast<int>(context_.plan().wishes.locked.size());
  context_.commit(edit::with_locked(context_.plan(), std::move(t)), tr("Draw a trench"));
  context_.pick({{Selected::Kind::locked, index}});
  context_.say(tr("Trench of %1 drawn; it stays, the others are placed round it.")
                   .arg(context_.length_text(length(points))));
}

QString TrenchTool::first_hint() const {
  return tr("Trench: click its head, where the pipe goes in, or type x,y and Enter.");
}

void TrenchTool::paint(const ToolPaint& p) const {
  Polyline line = points();
  if (!line.empty() && distance(line.back(), p.pointer.at) > kSamePlace) line.push_back(p.pointer.at);
  if (line.size() > 1) {
    QPolygonF outline;
    for (Point corner : strip_along(line, context_.plan().wishes.trench_width))
      outline << p.view.to_device(corner);
    QColor fill = p.look.selection;
    fill.setAlphaF(0.14F);
    p.painter.save();
    p.painter.setPen(QPen(p.look.selection, 1, Qt::DashLine));
    p.painter.setBrush(fill);
    p.painter.drawPolygon(outline);
    p.painter.restore();
  }
  PathTool::paint(p);
}

}  // namespace underlawn
