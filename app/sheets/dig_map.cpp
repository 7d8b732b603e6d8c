// SPDX-License-Identifier: GPL-3.0-or-later
// The lot again to scale, with heaps, order numbers and the machine's way.
#include <algorithm>

#include "canvas/plan_painter.h"
#include "dig/dig_order.h"
#include "sheets/contents.h"
#include "sheets/map_parts.h"
#include "sheets/off_page.h"
#include "sheets/paper.h"

namespace underlawn::sheet {

namespace {

const double kAround = pt(12);
const double kTallest = pt(330);
const double kWords = pt(28);

class DigMap : public Block {
 public:
  DigMap(const Plan& plan, const Outcome& outcome)
      : plan_(plan), outcome_(outcome), box_(drawn_box(plan, outcome)) {}

  double height(double width) const override {
    return heading_height() + (box_.high.y - box_.low.y) * per_metre(scale_for(width)) + 2 * kAround + kWords;
  }

  void paint(QPainter& painter, const QRectF& room) const override {
    const int scale = scale_for(room.width());
    paint_heading(painter, room,
                  QObject::tr("HEAPS, ORDER AND MACHINE %1").arg(scale_text(scale, plan_.units)));
    const QRectF map(room.left(), room.top() + heading_height(), room.width(),
                     height(room.width()) - heading_height() - kWords);
    const View view{0.5 * (box_.low + box_.high), per_metre(scale), map.size(), 0};
    PaintOptions options;
    options.dig = true;
    options.zones = options.edge_lengths = options.findings = options.heights = false;
    painter.save();
    painter.setClipRect(map);
    painter.translate(map.topLeft());
    paint_plan(painter, plan_, &outcome_, view, sheet_look(), options);
    painter.restore();
    painter.setBrush(Qt::NoBrush);
    painter.setPen(rule(0.8));
    painter.drawRect(map);
    paint_north(painter, map.topRight() + QPointF(-pt(22), pt(26)), pt(18), plan_.site.north);
    paint_words(painter, QRectF(map.left(), map.bottom(), map.width(), kWords));
  }

 private:
  int scale_for(double width) const {
    const double wide = box_.high.x - box_.low.x, high = box_.high.y - box_.low.y;
    for (const int scale : usual_scales(plan_.units)) {
      const double k = per_metre(scale);
      if (wide * k + 2 * kAround <= width && high * k + 2 * kAround <= kTallest) return scale;
    }
    return usual_scales(plan_.units).back();
  }

  static void paint_words(QPainter& painter, const QRectF& room) {
    double y = room.top() + pt(11);
    const QString words = QObject::tr(
        "Square: number of the step in the order below; “truck”: no heap, trucked off. Arrow: the way it is "
        "dug. Dotted: heap at its real width. Dashes: way of the machine. Rungs: ladder.");
    for (const QString& line : wrapped(words, type(9), room.width(), 2)) {
      write(painter, {room.left(), y}, line, type(9), kFaint);
      y += line_height(type(9));
    }
  }

  Plan plan_;
  Outcome outcome_;
  Box box_;
};

}  // namespace

BlockPtr dig_map(const Plan& plan, const Outcome& outcome) {
  if (outcome.order == nullptr || outcome.order->steps.empty()) return nullptr;
  return std::make_shared<DigMap>(plan, outcome);
}

}  // namespace underlawn::sheet
