// SPDX-License-Identifier: GPL-3.0-or-later
// The drawing to be brought in, as it lies on the plan.
#include <QEvent>
#include <QPainter>

#include "canvas/canvas.h"
#include "plane/region.h"
#include "window/import_card.h"

namespace underlawn {

namespace {

constexpr std::size_t kMostPreviewed = 150'000;  // points; more would make the drawing slow to move

QPolygonF on_device(const Polyline& line, const View& view) {
  QPolygonF out;
  for (Point p : line) out << view.to_device(p);
  return out;
}

}  // namespace

void ImportCard::make_lines() {
  lines_.clear();
  std::size_t points = 0;
  for (std::size_t g = 0; g < groups_.size(); ++g)
    for (int i : groups_[g].shapes) {
      const underlawn::Shape& s = drawing_.shapes[static_cast<std::size_t>(i)];
      points += s.points.size();
      if (points > kMostPreviewed) return;
      Polyline line;
      for (Point p : s.points) line.push_back(how_.placement(p));
      if (s.kind == ShapeKind::area) line.push_back(line.front());
      lines_.emplace_back(static_cast<int>(g), std::move(line));
    }
}

void ImportCard::paint_guest(QPainter& painter, const View& view) const {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setBrush(Qt::NoBrush);
  const Look& look = canvas().look();
  const auto becomes = chosen();
  for (const auto& [group, line] : lines_) {
    const bool wanted = becomes[static_cast<std::size_t>(group)] != Becomes::left_out;
    const bool pointed = group == pointed_;
    QColor colour = pointed ? look.selection : wanted ? look.ghost : look.faint_text;
    painter.setPen(QPen(colour,
                        pointed  ? 3
                        : wanted ? 1.6
                                 : 0.8,
                        wanted || pointed ? Qt::SolidLine : Qt::DotLine));
    if (line.size() == 1)
      painter.drawEllipse(view.to_device(line[0]), pointed ? 5 : 3, pointed ? 5 : 3);
    else
      painter.drawPolyline(on_device(line, view));
  }
  painter.setPen(QPen(look.selection, 2.4));
  if (brought_.lots.size() > 1) painter.drawPolygon(on_device(brought_.lots.front(), view));
  painter.restore();
}

// The nearest corner of the drawing within reach.
Point ImportCard::caught(Point p, double reach) const {
  Point best = p;
  for (const auto& [group, line] : lines_)
    for (Point q : line)
      if (const double d = distance(p, q); d < reach) {
        reach = d;
        best = q;
      }
  return best;
}

bool ImportCard::click(Point p) {
  for (const Ring& ring : brought_.lots)
    if (brought_.lots.size() > 1 && contains(ring, p)) {
      how_.lot_at = in_drawing(p);
      refresh();
      return true;
    }
  return true;  // what is not yet on the plan is not to be changed by a tool
}

bool ImportCard::eventFilter(QObject* watched, QEvent* event) {
  const QVariant group = watched->property("group");
  const bool in = event->type() == QEvent::Enter || event->type() == QEvent::FocusIn;
  const bool out = event->type() == QEvent::Leave || event->type() == QEvent::FocusOut;
  if (group.isValid() && (in || out)) {
    pointed_ = in ? group.toInt() : -1;
    canvas().update();
  }
  return CanvasCard::eventFilter(watched, event);
}

}  // namespace underlawn
