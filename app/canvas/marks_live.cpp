// SPDX-License-Identifier: GPL-3.0-or-later
// Lengths of the sides that a gesture is changing.
#include <cmath>

#include "canvas/marks.h"
#include "layout/given.h"
#include "tools/gesture_paint.h"

namespace underlawn {

namespace {

struct Outline {
  std::vector<Point> points;
  bool closed = false;
};

Outline outline_of(const Plan& plan, const Selected& what) {
  using Kind = Selected::Kind;
  if (!is_there(plan, what)) return {};
  if (what.kind == Kind::lot || what.kind == Kind::lot_edge) return {lot_ring(plan.site), true};
  if (what.kind == Kind::locked)
    return {line_of(plan.wishes.locked[static_cast<std::size_t>(what.id)]), false};
  if (what.kind != Kind::feature) return {};
  const Feature& f = *find_feature(plan.site, what.id);
  return {f.points, shape_of(f.kind) == FeatureShape::area};
}

std::vector<double> lengths(const Outline& o) {
  std::vector<double> all;
  const std::size_t n = o.points.size(), sides = n < 2 ? 0 : o.closed && n > 2 ? n : n - 1;
  for (std::size_t i = 0; i < sides; ++i) all.push_back(distance(o.points[i], o.points[(i + 1) % n]));
  return all;
}

void paint_length(const ToolPaint& p, Point a, Point b, UnitSystem units) {
  const QLineF line(p.view.to_device(a), p.view.to_device(b));
  if (line.length() < 30) return;
  const QPointF out = QPointF(line.dy(), -line.dx()) / line.length();
  const std::string text = print_quantity(Quantity::length, distance(a, b), units, Fineness::fine);
  paint_plate(p, line.center() + 10 * out + QPointF(-20, 8), {QString::fromStdString(text)}, p.look.text);
}

}  // namespace

void paint_live_lengths(const ToolPaint& p, const Plan& before, const Plan& now,
                        const std::vector<Selected>& what) {
  for (const Selected& s : what) {
    const Outline is = outline_of(now, s), was = outline_of(before, s);
    const auto new_lengths = lengths(is), old_lengths = lengths(was);
    const bool same_sides = new_lengths.size() == old_lengths.size();
    for (std::size_t i = 0; i < new_lengths.size(); ++i)
      if (!same_sides || std::abs(new_lengths[i] - old_lengths[i]) > kSamePlace)
        paint_length(p, is.points[i], is.points[(i + 1) % is.points.size()], now.units);
  }
}

void paint_held_way(const ToolPaint& p, Point from, Point way) {
  const double far = (p.view.size.width() + p.view.size.height()) / p.view.scale;
  QColor faint = p.look.snap;
  faint.setAlphaF(0.7F);
  p.painter.save();
  p.painter.setPen(QPen(faint, 1.2, Qt::DashDotLine));
  p.painter.drawLine(p.view.to_device(from - far * way), p.view.to_device(from + far * way));
  p.painter.restore();
}

}  // namespace underlawn
