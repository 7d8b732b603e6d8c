// SPDX-License-Identifier: GPL-3.0-or-later
// The two pipes through the wall below ground. Sleeve and seal are common practice, no source; the wall is
// drawn only for show.
#include <cmath>

#include "sheets/contents.h"
#include "sheets/detail_parts.h"

namespace underlawn::sheet {

namespace {

constexpr double kThick = pt(24);
constexpr double kPipeDepth = pt(92);
const double kTop = pt(24);                              // of the ground under the heading
const double kWordsInside = kTop + kPipeDepth + pt(34);  // first line of what is inside
const double kInsideLine = pt(11);

class EntryDetail : public Block {
 public:
  EntryDetail(const Plan& plan, const Outcome&) : plan_(plan) {}
  double height(double width) const override {
    const double text = static_cast<double>(below(width).size()) * line_height(type(9.5));
    return heading_height() + section(width) + text + pt(6);
  }
  void paint(QPainter& painter, const QRectF& room) const override {
    paint_heading(painter, room, QObject::tr("ENTRY THROUGH THE WALL, not to scale"));
    const double top = room.top() + heading_height() + kTop;
    paint_wall(painter, room, top);
    paint_pipes(painter, room, top);
    paint_text_below(painter, room);
  }

 private:
  static double wall(const QRectF& room) { return room.left() + 0.5 * room.width(); }
  static QStringList inside(double width) {
    const QString words = QObject::tr("valves, flush ports,\ngauge ports inside").replace('\n', ' ');
    return wrapped(words, type(9), 0.5 * width - kThick - pt(12));
  }
  static QStringList below(double width);
  // Of the drawing, down to the wall's foot or the last word beside it.
  static double section(double width) {
    return std::max(kTop + pt(146), kWordsInside + static_cast<double>(inside(width).size()) * kInsideLine);
  }
  void paint_wall(QPainter& painter, const QRectF& room, double top) const;
  void paint_pipes(QPainter& painter, const QRectF& room, double top) const;
  void paint_text_below(QPainter& painter, const QRectF& room) const;

  Plan plan_;
};

void EntryDetail::paint_wall(QPainter& painter, const QRectF& room, double top) const {
  const double x = wall(room), bottom = top + pt(136);
  ground_line(painter, room.left(), x, top);
  painter.setPen(rule(1.4));
  painter.setBrush(QColor("#e4e4e4"));
  painter.drawRect(QRectF(QPointF(x, top - pt(20)), QPointF(x + kThick, bottom)));
  painter.setBrush(Qt::NoBrush);
  painter.setPen(rule(0.5));
  for (double y = top - pt(14); y < bottom; y += pt(10))
    painter.drawLine(QPointF(x, y), QPointF(x + kThick, y));
  write(painter, {x + kThick + pt(8), top - pt(8)}, QObject::tr("house"), type(9, QFont::DemiBold));
  // Two pipes rise through the fill from the floor of the run to the wall.
  painter.setPen(rule(0.8));
  painter.drawLine(QPointF(room.left(), bottom - pt(8)), QPointF(x, bottom - pt(8)));
}

void EntryDetail::paint_pipes(QPainter& painter, const QRectF& room, double top) const {
  const double x = wall(room), y = top + kPipeDepth;
  for (double off : {0.0, pt(17)}) {
    painter.setPen(rule(6.4, "#0d3550"));
    painter.drawLine(QPointF(room.left() + pt(4), y + off), QPointF(x + kThick + pt(64), y + off));
    QPen inside = rule(4, Qt::white);
    painter.setPen(inside);
    painter.drawLine(QPointF(room.left() + pt(4), y + off), QPointF(x + kThick + pt(64), y + off));
    // Sleeve and its seal.
    painter.setPen(rule(1.2));
    painter.setBrush(QColor("#8a8a8a"));
    painter.drawRect(QRectF(QPointF(x, y + off - pt(6.5)), QPointF(x + kThick, y + off - pt(3.2))));
    painter.drawRect(QRectF(QPointF(x, y + off + pt(3.2)), QPointF(x + kThick, y + off + pt(6.5))));
    painter.setBrush(Qt::NoBrush);
  }
  QPen tape = rule(2.2, "#c8000f");
  tape.setDashPattern({2.2, 1});
  painter.setPen(tape);
  painter.drawLine(QPointF(room.left() + pt(10), top + pt(34)), QPointF(x - pt(8), top + pt(34)));
  dimension(painter, {x - pt(14), top}, {x - pt(14), y - pt(3)},
            shown_length(plan_, plan_.wishes.run_depth - plan_.wishes.bedding), {x - pt(19), top + pt(56)},
            Align::right);
  const double left = room.left() + pt(6), free = x - pt(18) - left;
  write_fitted(painter, {left, top + pt(30)}, QObject::tr("warning tape"), free, {9, 6.5});
  write_fitted(painter, {left, y - pt(8)}, QObject::tr("2 pipes, supply and return"), free, {9, 6.5});
  named(painter, {x + kThick / 2, y - pt(5)}, {x + kThick + pt(12), y - pt(22)},
        QObject::tr("sealed sleeve"));
  double line = top - kTop + kWordsInside;
  for (const QString& text : inside(room.width())) {
    write(painter, {x + kThick + pt(12), line}, text, type(9));
    line += kInsideLine;
  }
}

QStringList EntryDetail::below(double width) {
  const QString text = QObject::tr(
      "Depth shown: ground to the top of the bedding of the run. Sleeve the pipe through the wall, never "
      "through "
      "or under a footing; fill between pipe and sleeve with a seal that stays soft; slope the sleeve to the "
      "outside. Insulate the pipes inside against sweating. Firm, hand-tamped bedding up to the wall, so "
      "that the "
      "pipe does not hang on its sleeve.");
  return wrapped(text, type(9.5), width);
}

void EntryDetail::paint_text_below(QPainter& painter, const QRectF& room) const {
  double y = room.top() + heading_height() + section(room.width()) + pt(12);
  for (const QString& line : below(room.width())) {
    write(painter, {room.left(), y}, line, type(9.5));
    y += line_height(type(9.5));
  }
}

}  // namespace

BlockPtr entry_block(const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.run.line.size() < 2) return nullptr;
  return std::make_shared<EntryDetail>(plan, outcome);
}

}  // namespace underlawn::sheet
