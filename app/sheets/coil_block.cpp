// SPDX-License-Identifier: GPL-3.0-or-later
// One coil as it is laid: from above where it lies flat or straight, from the side where it stands. The
// middle of a long coil is left out.
#include <cmath>

#include "canvas/labels.h"
#include "field/straight.h"
#include "sheets/contents.h"
#include "sheets/detail_parts.h"

namespace underlawn::sheet {

namespace {

const double kAbove = pt(34);
const double kBelow = pt(60);

class CoilDetail : public Block {
 public:
  CoilDetail(const Plan& plan, const Outcome& outcome)
      : plan_(plan), trench_(outcome.layout.trenches.front()) {
    const Coil& coil = trench_.coil;
    drawn_ = std::min(coil.trench_length, 0.45 * coil.trench_length + 0.3);
    drawn_ = std::min(drawn_, std::max(8 * coil.pitch + coil.loop_diameter, 3.0));
    across_ = coil.pattern == CoilPattern::upright_coil ? coil.loop_diameter
                                                        : std::max(trench_.width, coil.loop_diameter);
  }

  double height(double width) const override {
    return heading_height() + kAbove + across_ * per_metre(scale(width)) + kBelow;
  }

  void paint(QPainter& painter, const QRectF& room) const override {
    const int n = scale(room.width());
    paint_heading(painter, room,
                  QObject::tr("COIL, HEAD END, %1 %2").arg(view_words(), detail_scale_text(n, plan_.units)));
    const double k = per_metre(n);
    const QPointF head(room.left() + kSide, room.top() + heading_height() + kAbove + across_ * k / 2);
    paint_trench(painter, head, k);
    paint_pipe(painter, head, k);
    paint_dimensions(painter, head, k, room);
  }

 private:
  static constexpr double kSide = pt(74);   // left of the head: tags
  static constexpr double kRight = pt(24);  // right of the break

  bool stands() const { return trench_.coil.pattern == CoilPattern::upright_coil; }
  QString view_words() const { return stands() ? QObject::tr("FROM THE SIDE") : QObject::tr("FROM ABOVE"); }
  int scale(double width) const {
    const int along = detail_scale(plan_.units, drawn_, width - kSide - kRight);
    return std::max(along, detail_scale(plan_.units, across_, pt(110)));
  }
  void paint_trench(QPainter& painter, QPointF head, double k) const;
  void paint_pipe(QPainter& painter, QPointF head, double k) const;
  void paint_dimensions(QPainter& painter, QPointF head, double k, const QRectF& room) const;
  Polyline path() const;

  Plan plan_;
  Trench trench_;
  double drawn_ = 0, across_ = 0;  // m
};

Polyline CoilDetail::path() const {
  return is_straight(trench_.coil.pattern) ? straight_path(trench_.coil) : coil_path(trench_.coil, 60);
}

void CoilDetail::paint_trench(QPainter& painter, QPointF head, double k) const {
  const double half = across_ * k / 2, right = head.x() + drawn_ * k;
  painter.setPen(rule(1.2));
  if (stands()) {
    painter.drawLine(QPointF(head.x(), head.y() + half + pt(3)), QPointF(right, head.y() + half + pt(3)));
  } else {
    painter.setBrush(QColor("#f7f1e6"));
    painter.setPen(Qt::NoPen);
    painter.drawRect(QRectF(QPointF(head.x(), head.y() - half), QPointF(right, head.y() + half)));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(rule(1.2));
    painter.drawPolyline(QPolygonF({{right, head.y() - half},
                                    {head.x(), head.y() - half},
                                    {head.x(), head.y() + half},
                                    {right, head.y() + half}}));
  }
}

// Only what lies this side of the break; a wavy line says that it goes on.
void CoilDetail::paint_pipe(QPainter& painter, QPointF head, double k) const {
  const double right = head.x() + drawn_ * k, half = across_ * k / 2 + pt(6);
  painter.save();
  painter.setClipRect(
      QRectF(QPointF(head.x() - kSide, head.y() - half - pt(4)), QPointF(right, head.y() + half + pt(4))));
  QPolygonF line;
  const double lift = stands() ? trench_.coil.loop_diameter / 2 : 0;
  for (Point p : path()) line << head + QPointF(p.x * k, -(p.y + (stands() ? 0 : lift)) * k);
  QPen pen(QColor("#0d3550"), pt(1.3), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
  painter.setPen(pen);
  painter.drawPolyline(line);
  painter.restore();
  QPainterPath wave(QPointF(right, head.y() - half));
  for (double y = head.y() - half; y < head.y() + half; y += pt(8))
    wave.cubicTo({right + pt(3), y + pt(2.7)}, {right - pt(3), y + pt(5.3)}, {right, y + pt(8)});
  painter.setPen(rule(0.8));
  painter.drawPath(wave);
}

void CoilDetail::paint_dimensions(QPainter& painter, QPointF head, double k, const QRectF& room) const {
  const Coil& coil = trench_.coil;
  const double half = across_ * k / 2, below = head.y() + half;
  const bool loops = !is_straight(coil.pattern);
  if (loops) {
    const double d = coil.loop_diameter * k, p = coil.pitch * k;
    dimension(painter, {head.x(), head.y() - half - pt(10)}, {head.x() + d, head.y() - half - pt(10)},
              QObject::tr("loop %1").arg(shown_length(plan_, coil.loop_diameter)),
              {head.x() + d / 2, head.y() - half - pt(15)}, Align::centre);
    dimension(painter, {head.x() + d + p, head.y() - half - pt(10)},
              {head.x() + d + 2 * p, head.y() - half - pt(10)},
              QObject::tr("pitch %1").arg(shown_pitch(plan_, coil.pitch)),
              {head.x() + d + 2 * p + pt(6), head.y() - half - pt(15)}, Align::left);
  }
  if (!stands())
    dimension(painter, {room.left() + pt(10), head.y() - half}, {room.left() + pt(10), below},
              shown_length(plan_, trench_.width), {room.left() + pt(15), head.y() + pt(20)}, Align::left);
  write(painter, {head.x() - pt(6), head.y() - pt(4)}, "1-S, 1-R", type(9, QFont::Bold), kInk, Align::right);
  const QString text =
      loops ? QObject::tr(
                  "%1 loops (whole + part of one) of %2 pipe, %3 in one coil; trench %4 long. Ties: %6 a "
                  "loop, where it crosses its neighbours. Both "
                  "ends at the head, capped until joined, tagged with the trench's number: S supply, R "
                  "return. The return pipe runs back %5.")
                  .arg(shown_loops(coil.loops), text_of(plan_.wishes.pipe),
                       shown_length(plan_, coil.coil_length), shown_length(plan_, coil.trench_length),
                       stands() ? (coil.return_on_top ? QObject::tr("on top of the loops")
                                                      : QObject::tr("on the floor"))
                                : QObject::tr("along the middle, on the loops"))
                  .arg(plan_.pricing.counting.ties_per_loop)
            : QObject::tr(
                  "%1 of %2 pipe in one piece, %3; trench %4 long. Both ends at the head, capped until "
                  "joined, tagged with the trench's number: S supply, R return.")
                  .arg(shown_length(plan_, coil.coil_length), text_of(plan_.wishes.pipe),
                       text_of(std::string(pattern_name(coil.pattern))),
                       shown_length(plan_, coil.trench_length));
  double y = below + pt(20);
  for (const QString& line : wrapped(text, type(9.5), room.width(), 4)) {
    write(painter, {room.left(), y}, line, type(9.5));
    y += line_height(type(9.5));
  }
}

}  // namespace

BlockPtr coil_block(const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty() || !outcome.layout.trenches.front().coil.laid()) return nullptr;
  return std::make_shared<CoilDetail>(plan, outcome);
}

}  // namespace underlawn::sheet
