// SPDX-License-Identifier: GPL-3.0-or-later
// Where pipes of different depth meet: the step from a coil trench to the header, and the run's pipes over a
// coil.
#include <algorithm>

#include "canvas/hatch.h"
#include "dig/protection.h"
#include "plan/figures/groups.h"
#include "sheets/contents.h"
#include "sheets/detail_parts.h"

namespace underlawn::sheet {

namespace {

const QColor kPipe("#0d3550");
const double kDeep = pt(96);  // the deeper of the two depths, on paper

class Heads : public Block {
 public:
  Heads(const Plan& plan, const Outcome& outcome) : plan_(plan) {
    for (const Trench& t : outcome.layout.trenches) {
      coil_ = std::max(coil_, t.depth);
      const Figure* over = outcome.figures.find(figures::trench_key(t.number) + ".run_floor");
      if (over == nullptr) continue;
      over_coil_ = over->value;
      over_ << QString::number(t.number);
    }
    for (const FloorLevel& f : outcome.dig.floors) coil_ = std::max(coil_, f.ground_head - f.floor_head);
  }

  double height(double width) const override {
    return heading_height() + pt(26) + kDeep + pt(14) + (over_coil_ > 0 ? 5 : 3) * line_height(type(9.5)) +
           below(width);
  }

  void paint(QPainter& painter, const QRectF& room) const override {
    paint_heading(painter, room, QObject::tr("AT A TRENCH HEAD, from the side, not to scale"));
    const double top = room.top() + heading_height() + pt(26);
    paint_step(painter, {room.left() + pt(60), top});
    if (over_coil_ > 0) paint_supply(painter, {room.left() + 0.68 * room.width(), top});
    paint_held(painter, room);
  }

 private:
  // Beside a lone drawing, else under both.
  double below(double width) const {
    if (over_coil_ == 0 || held_words().isEmpty()) return 0;
    return static_cast<double>(wrapped(held_words(), type(9.5), width).size()) * line_height(type(9.5)) +
           pt(2);
  }

  void paint_held(QPainter& painter, const QRectF& room) const {
    const double width = room.width(), left = over_coil_ == 0 ? 0.5 * width : 0;
    double y = over_coil_ == 0 ? room.top() + heading_height() + pt(20)
                               : room.top() + height(width) - below(width) + pt(8);
    for (const QString& line : wrapped(held_words(), type(9.5), width - left)) {
      write(painter, {room.left() + left, y}, line, type(9.5));
      y += line_height(type(9.5));
    }
  }

  // The side of the header's cut is missing where a coil trench comes in. Common practice, no source; who is
  // competent decides.
  QString held_words() const {
    if (plan_.dig.coil_sides != Sides::stay_out || !is_entered(plan_.dig.run_sides)) return {};
    return plan_.dig.run_sides == Sides::shield
               ? QObject::tr(
                     "Who joins stays inside the shield: its wall stands across the opening of the coil "
                     "trench, "
                     "the two pipe ends come to him under it or round its end. Where it does not close the "
                     "opening, plates or shores set from above do so first. Nobody on the step or beyond it. "
                     "The "
                     "competent person decides how.")
               : QObject::tr(
                     "The opening of the coil trench is closed by plates or shores set from above before "
                     "anybody "
                     "joins there. Nobody on the step or beyond it. The competent person decides how.");
  }

  double down(double metres) const { return metres / std::max(coil_, plan_.wishes.run_depth) * kDeep; }

  void paint_step(QPainter& p, QPointF at) const {
    const double head = at.x() + pt(60), end = at.x() + pt(170);
    const double header = at.y() + down(plan_.wishes.run_depth), floor = at.y() + down(coil_);
    ground_line(p, at.x() - pt(20), at.x(), at.y());
    ground_line(p, end, end + pt(8), at.y());
    p.setPen(rule(1.6));
    p.drawPolyline(
        QPolygonF({{at.x(), at.y()}, {at.x(), header}, {head, header}, {head, floor}, {end, floor}}));
    p.setPen(rule(2.4, kPipe));
    p.drawPolyline(QPolygonF({{end, floor - pt(5)},
                              {head + pt(8), floor - pt(5)},
                              {head - pt(6), header - pt(6)},
                              {at.x() + pt(24), header - pt(6)}}));
    p.setBrush(Qt::white);
    for (double x : {pt(14), pt(24)}) p.drawEllipse(QPointF(at.x() + x, header - pt(6)), pt(3.4), pt(3.4));
    p.setBrush(Qt::NoBrush);
    dimension(p, {at.x() - pt(8), at.y()}, {at.x() - pt(8), header},
              shown_length(plan_, plan_.wishes.run_depth), {at.x() - pt(13), (at.y() + header) / 2},
              Align::right);
    dimension(p, {end - pt(6), at.y()}, {end - pt(6), floor}, shown_length(plan_, coil_),
              {end, (at.y() + floor) / 2}, Align::left);
    write(p, {at.x() + pt(4), at.y() + pt(12)}, QObject::tr("header"), type(9));
    write(p, {head + pt(6), at.y() + pt(12)}, QObject::tr("coil trench"), type(9));
    const QString words =
        coil_ > plan_.wishes.run_depth + 0.01
            ? QObject::tr("Leave the step of %1 standing; both pipe ends of the coil rise over it, bedded.")
                  .arg(shown_length(plan_, coil_ - plan_.wishes.run_depth))
            : QObject::tr("Header and coil trench have one floor.");
    lines(p, {at.x() - pt(60), std::max(floor, header) + pt(16)}, words, pt(250));
  }

  // Cut across: the coil on the floor, the two pipes of the run over it.
  void paint_supply(QPainter& p, QPointF at) const {
    const double half = pt(30), floor = at.y() + down(coil_);
    const double run = std::min(at.y() + down(over_coil_), floor - pt(14)), sand = pt(11);
    ground_line(p, at.x() - half - pt(16), at.x() - half, at.y());
    ground_line(p, at.x() + half, at.x() + half + pt(16), at.y());
    p.setPen(rule(1.6));
    p.drawPolyline(QPolygonF(
        {{at.x() - half, at.y()}, {at.x() - half, floor}, {at.x() + half, floor}, {at.x() + half, at.y()}}));
    for (double top : {floor, run}) paint_sand(p, QRectF(at.x() - half, top - sand, 2 * half, sand));
    p.setPen(rule(1.8, kPipe));
    p.drawLine(QPointF(at.x() - half + pt(4), floor - pt(5)), QPointF(at.x() + half - pt(4), floor - pt(5)));
    p.setBrush(Qt::white);
    const double y = run - pt(5);
    for (double side : {-1.0, 1.0}) p.drawEllipse(QPointF(at.x() + side * pt(12), y), pt(3.4), pt(3.4));
    p.setBrush(Qt::NoBrush);
    dimension(p, {at.x() + half + pt(8), at.y()}, {at.x() + half + pt(8), run},
              shown_length(plan_, over_coil_), {at.x() + half + pt(13), (at.y() + run) / 2}, Align::left);
    lines(p, {at.x() - pt(70), floor + pt(16)},
          QObject::tr("Trench %1, shared with the run: coil on the floor, bedded, filled to %2 deep; on that "
                      "the run's two pipes, bedded too.")
              .arg(over_.join(", "), shown_length(plan_, over_coil_)),
          pt(230));
  }

  static void paint_sand(QPainter& p, const QRectF& sand) {
    QPen dots(kInk, pt(0.8), Qt::SolidLine, Qt::RoundCap);
    dots.setDashPattern({0.01, 3.4});
    p.setPen(dots);
    p.drawLines(hatch_lines({QPolygonF(sand)}, {pt(2.4), 18, sand.topLeft()}, sand));
    p.setPen(rule(0.6));
    p.drawLine(sand.topLeft(), sand.topRight());
    p.drawLine(sand.bottomLeft(), sand.bottomRight());
  }

  static void lines(QPainter& p, QPointF at, const QString& text, double width) {
    double y = at.y();
    for (const QString& line : wrapped(text, type(9.5), width, 5)) {
      write(p, {at.x(), y}, line, type(9.5));
      y += line_height(type(9.5));
    }
  }

  Plan plan_;
  double coil_ = 0;       // m
  double over_coil_ = 0;  // m, floor of the run's pipes where they lie over a coil; 0: nowhere
  QStringList over_;      // numbers of those trenches
};

}  // namespace

BlockPtr head_block(const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty() || outcome.layout.run.line.size() < 2) return nullptr;
  return std::make_shared<Heads>(plan, outcome);
}

}  // namespace underlawn::sheet
