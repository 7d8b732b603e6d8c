// SPDX-License-Identifier: GPL-3.0-or-later
// Every kind of trench cut across, to scale, with its sides as they are to be held and its heap beside it.
#include <cmath>

#include "dig/dig_order.h"
#include "dig/dig_words.h"
#include "sheets/contents.h"
#include "sheets/detail_parts.h"

namespace underlawn::sheet {

namespace {

struct Cut {
  QString name;
  const DigStep* step;
};

// The first coil trench with a heap, and the first part of header or run; a kind of another section each.
std::vector<Cut> cuts_of(const DigOrder& order) {
  std::vector<Cut> cuts;
  const auto first = [&](bool coil) {
    const DigStep* found = nullptr;
    for (const DigStep& s : order.steps)
      if ((s.kind == DigKind::trench) == coil && (found == nullptr || (found->hauled && !s.hauled)))
        found = &s;
    return found;
  };
  if (const DigStep* coil = first(true)) cuts.push_back({QObject::tr("Coil trench"), coil});
  if (const DigStep* run = first(false)) cuts.push_back({QObject::tr("Header and run"), run});
  return cuts;
}

constexpr int kUsScales[] = {48, 64, 96, 128, 192, 384};
constexpr int kMetricScales[] = {50, 75, 100, 150, 200, 500};

class Sections : public Block {
 public:
  Sections(const Plan& plan, std::shared_ptr<const DigOrder> order)
      : plan_(plan), order_(std::move(order)), cuts_(cuts_of(*order_)) {}

  double height(double width) const override {
    const double k = per_metre(scale_for(width));
    double tall = 0;
    for (const Cut& c : cuts_) tall += above(c, k) + c.step->depth * k + kBelow;
    return heading_height() + tall;
  }

  void paint(QPainter& painter, const QRectF& room) const override {
    const int scale = scale_for(room.width());
    const double k = per_metre(scale);
    paint_heading(painter, room,
                  QObject::tr("SIDES AND SPOIL %1").arg(detail_scale_text(scale, plan_.units)));
    double y = room.top() + heading_height();
    for (const Cut& c : cuts_) {
      y += above(c, k);
      paint_cut(painter, c, {room.left() + kSide + c.step->top * k / 2, y}, k, room.width() - pt(6));
      y += c.step->depth * k + kBelow;
    }
  }

 private:
  static constexpr double kSide = pt(66), kRight = pt(14), kBelow = pt(66);

  double above(const Cut& c, double k) const {
    const double shield = c.step->sides == Sides::shield ? 0.46 * k : 0;
    return std::max({pt(20), c.step->heap.height * k + pt(8), shield + pt(8)});
  }
  double wide(const Cut& c) const { return c.step->top + plan_.dig.spoil_off + c.step->heap.width; }

  int scale_for(double width) const {
    double most = 0, deep = 0;
    for (const Cut& c : cuts_) {
      most = std::max(most, wide(c));
      deep = std::max(deep, c.step->depth);
    }
    const auto& scales = plan_.units == UnitSystem::us ? kUsScales : kMetricScales;
    for (int scale : scales)
      if (kSide + most * per_metre(scale) + kRight <= width && deep * per_metre(scale) <= pt(96))
        return scale;
    return scales[5];
  }

  void across(QPainter& p, double x0, double x1, double y, const QString& text) const {
    p.setPen(rule(0.6));
    p.drawLine(QPointF(x0, y), QPointF(x1, y));
    p.setPen(rule(1.1));
    for (double x : {x0, x1}) p.drawLine(QPointF(x - pt(2), y + pt(2)), QPointF(x + pt(2), y - pt(2)));
    write(p, {(x0 + x1) / 2, y + pt(11)}, text, type(9.5, QFont::DemiBold), kInk, Align::centre);
  }

  void paint_sides(QPainter& p, const DigStep& s, QPointF mid, double k) const {
    const double half = s.width / 2 * k, floor = mid.y() + s.depth * k;
    if (s.sides == Sides::shield) {
      p.setPen(rule(3));
      for (double side : {-1.0, 1.0})
        p.drawLine(QPointF(mid.x() + side * (half - pt(3)), mid.y() - 0.46 * k),
                   QPointF(mid.x() + side * (half - pt(3)), floor - pt(1)));
    }
    if (s.sides != Sides::shield && s.sides != Sides::shoring) return;
    p.setPen(rule(1.4));
    for (double share : {0.25, 0.6})
      p.drawLine(QPointF(mid.x() - half + pt(3), mid.y() + share * s.depth * k),
                 QPointF(mid.x() + half - pt(3), mid.y() + share * s.depth * k));
  }

  void paint_cut(QPainter& p, const Cut& c, QPointF mid, double k, double width) const {
    const DigStep& s = *c.step;
    const double top = s.top / 2 * k, half = s.width / 2 * k, floor = mid.y() + s.depth * k;
    const double off = plan_.dig.spoil_off * k, heap = s.heap.width * k;
    const double right = mid.x() + top + off + heap + pt(8);
    p.setPen(rule(1.6));
    p.setBrush(Qt::NoBrush);
    p.drawPolyline(QPolygonF({{mid.x() - top - pt(20), mid.y()},
                              {mid.x() - top, mid.y()},
                              {mid.x() - half, floor},
                              {mid.x() + half, floor},
                              {mid.x() + top, mid.y()},
                              {right, mid.y()}}));
    paint_sides(p, s, mid, k);
    if (heap > 0) {
      const double foot = mid.x() + top + off;
      p.setPen(rule(1));
      p.setBrush(kTint);
      p.drawPolygon(QPolygonF(
          {{foot, mid.y()}, {foot + heap / 2, mid.y() - s.heap.height * k}, {foot + heap, mid.y()}}));
      across(p, mid.x() + top, foot, mid.y() + pt(9), "");
      write(p, {mid.x() + top + pt(2), mid.y() + pt(32)},
            QObject::tr("%1 off the edge").arg(shown_length(plan_, plan_.dig.spoil_off)),
            type(9.5, QFont::DemiBold));
      across(p, foot, foot + heap, mid.y() + pt(9), shown_length(plan_, s.heap.width));
    }
    const double x = mid.x() - top - pt(12);
    p.setPen(rule(0.6));
    p.drawLine(QPointF(x, mid.y()), QPointF(x, floor));
    write(p, {x - pt(3), (mid.y() + floor) / 2 + pt(3)}, shown_length(plan_, s.depth),
          type(9.5, QFont::DemiBold), kInk, Align::right);
    across(p, mid.x() - half, mid.x() + half, floor + pt(7), shown_length(plan_, s.width));
    double y = floor + pt(33);
    for (const QString& line : wrapped(c.name + ": " + words(s) + heapless(s), type(9.5), width, 3)) {
      write(p, {mid.x() - top - pt(60), y}, line, type(9.5));
      y += line_height(type(9.5));
    }
  }

  // Drawn is one of a kind: those of it whose earth lies elsewhere.
  QString heapless(const DigStep& drawn) const {
    if (drawn.hauled) return ". " + QObject::tr("No heap: trucked off");
    QStringList numerals;
    for (std::size_t i = 0; i < order_->steps.size(); ++i) {
      const DigStep& s = order_->steps[i];
      if ((s.kind == DigKind::trench) == (drawn.kind == DigKind::trench) && s.hauled)
        numerals << text_of(step_numeral(static_cast<int>(i) + 1));
    }
    if (numerals.isEmpty()) return {};
    return ". " + QObject::tr("No heap, trucked off: steps %1").arg(numerals.join(", "));
  }

  QString words(const DigStep& s) const {
    switch (s.sides) {
      case Sides::stay_out:
        return QObject::tr("vertical, NOBODY GOES IN");
      case Sides::slope:
        return QObject::tr("laid back %1 : 1").arg(s.slope);
      case Sides::shield:
        return QObject::tr("shield %1 above the ground, people only inside it")
            .arg(plan_.units == UnitSystem::us ? "18 in" : "0.46 m");
      case Sides::shoring:
        return QObject::tr("shored from above");
    }
    return {};
  }

  Plan plan_;
  std::shared_ptr<const DigOrder> order_;
  std::vector<Cut> cuts_;
};

}  // namespace

BlockPtr digging_sections(const Plan& plan, const Outcome& outcome) {
  if (outcome.order == nullptr || outcome.order->steps.empty()) return nullptr;
  return std::make_shared<Sections>(plan, outcome.order);
}

}  // namespace underlawn::sheet
