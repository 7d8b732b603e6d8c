// SPDX-License-Identifier: GPL-3.0-or-later
// Buried lines in the APWA colours; the letter in the line says the kind without colour, and so does the
// dash.
#include <cmath>

#include "canvas/paint_context.h"
#include "canvas/utility_tags.h"

namespace underlawn {

namespace {

// Letters stand in the line at even steps, at least one on each line.
void letter(PaintContext& c, const QPolygonF& line, const Feature& f, const QColor& colour) {
  double whole = 0;
  for (int i = 0; i + 1 < line.size(); ++i) whole += QLineF(line[i], line[i + 1]).length();
  const QFont font = c.font(0.9, QFont::Bold);
  const double step = std::max(9.0 * font.pixelSize(), whole / 40);
  if (!(whole > 1.6 * font.pixelSize())) return;
  const int count = std::max(1, static_cast<int>(whole / step));
  // Neighbours of like length have theirs at other places.
  double next = whole / count * (0.5 + 0.16 * (f.id % 3 - 1)), walked = 0;
  const QString tag = utility_tag(c.plan.site, f);
  for (int i = 0; i + 1 < line.size(); ++i) {
    const QLineF leg(line[i], line[i + 1]);
    for (; next <= walked + leg.length() && leg.length() > 0; next += whole / count) {
      const QPointF p = leg.pointAt((next - walked) / leg.length());
      if (!c.device().contains(p)) continue;
      const double r = (tag.size() > 1 ? 0.82 : 0.62) * font.pixelSize();
      // The line stops before its letter, so that the letter needs no box.
      c.painter.setPen(Qt::NoPen);
      c.painter.setBrush(c.look.ground);
      c.painter.drawEllipse(p, r, r);
      paint_text(c.painter, tag, font, colour, c.look.ground, p, 0, 0);
      c.labels.keep_off(QPolygonF(QRectF(p.x() - r, p.y() - r, 2 * r, 2 * r)));
    }
    walked += leg.length();
  }
}

void name(PaintContext& c, const QPolygonF& line, const Feature& f, const QColor& colour) {
  if (!c.options.labels || line.size() < 2) return;
  Label label;
  label.text = QString::fromStdString(display_name(f));
  label.font = c.font(0.92);
  label.colour = colour;
  label.rank = 7;
  for (double along : {0.5, 0.3, 0.7, 0.15, 0.85})
    for (int i = 0; i + 1 < line.size() && i < 12; ++i) {
      const QLineF leg(line[i], line[i + 1]);
      if (leg.length() < 1) continue;
      double angle = -leg.angle();
      while (angle < -90) angle += 180;
      if (angle > 90 - 1e-9) angle -= 180;
      // One angle serves all places: the longest leg's.
      if (label.places.isEmpty()) label.angle = angle;
      if (std::abs(angle - label.angle) > 1) continue;
      const QPointF side(leg.dy() / leg.length(), -leg.dx() / leg.length());
      for (double off : {0.95, -0.95})
        label.places.push_back(leg.pointAt(along) + off * label.font.pixelSize() * side);
    }
  c.labels.add(std::move(label));
}

}  // namespace

void paint_utilities(PaintContext& c) {
  for (const Feature& f : c.plan.site.features) {
    if (f.kind != FeatureKind::utility) continue;
    const QPolygonF line = c.line(f.points);
    const QColor colour = apwa_colour(f.utility, c.look);
    c.painter.setBrush(Qt::NoBrush);
    c.painter.setPen(c.dashed(colour, 1.8, utility_dashes(f.utility)));
    c.painter.drawPolyline(line);
    c.labels.avoid(line);
    letter(c, line, f, colour.darker(c.look.dark ? 100 : 125));
    name(c, line, f, colour.darker(c.look.dark ? 100 : 135));
  }
}

}  // namespace underlawn
