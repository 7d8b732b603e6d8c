// SPDX-License-Identifier: GPL-3.0-or-later
// Buried lines in the APWA colours; the letter in the line says the kind without colour, and so does the
// dash.
#include <algorithm>

#include "canvas/map_name.h"
#include "canvas/utility_tags.h"

namespace underlawn {

namespace {

double length_of(const QPolygonF& line) {
  double whole = 0;
  for (int i = 0; i + 1 < line.size(); ++i) whole += QLineF(line[i], line[i + 1]).length();
  return whole;
}

QPointF place_along(const QPolygonF& line, double far) {
  for (int i = 0; i + 1 < line.size(); ++i) {
    const QLineF leg(line[i], line[i + 1]);
    if (far <= leg.length() && leg.length() > 0) return leg.pointAt(far / leg.length());
    far -= leg.length();
  }
  return line.back();
}

bool in_a_house(const PaintContext& c, QPointF p) {
  return std::any_of(c.plan.site.features.begin(), c.plan.site.features.end(), [&](const Feature& f) {
    return f.kind == FeatureKind::house && c.line(f.points).containsPoint(p, Qt::OddEvenFill);
  });
}

// The line stops before its letter, so that the letter needs no box. Neighbouring places are `step` apart: it
// gives way half as far.
void add_letter(PaintContext& c, const QPolygonF& line, const QString& tag, double far, double step,
                const QColor& colour, bool must) {
  Label label;
  label.text = tag;
  label.font = c.font(0.9, QFont::Bold);
  label.colour = colour;
  label.tag = TagShape::gap;
  label.tag_fill = c.look.ground;
  label.rank = 2;
  label.must = must;
  for (double aside : {0.0, 0.15, -0.15, 0.3, -0.3, 0.45, -0.45}) {
    const QPointF p = place_along(line, std::max(0.0, far + aside * step));
    if (c.device().contains(p) && !in_a_house(c, p)) label.places.push_back(p);
  }
  c.labels.add(std::move(label));
}

// Letters stand in the line at even steps, at least one on each line.
void add_letters(PaintContext& c, const QPolygonF& line, const Feature& f, const QColor& colour) {
  const double whole = length_of(line), em = c.font(0.9).pixelSize();
  const double step = std::max(9.0 * em, whole / 40);
  if (!(whole > 1.6 * em)) return;
  const int count = std::max(1, static_cast<int>(whole / step));
  const QString tag = utility_tag(c.plan.site, f);
  // Neighbours of like length have theirs at other places.
  const double first = 0.5 + 0.16 * (f.id % 3 - 1);
  for (int i = 0; i < count; ++i)
    add_letter(c, line, tag, whole / count * (first + i), whole / count, colour, i == count / 2);
}

void name(PaintContext& c, const QPolygonF& line, const Feature& f, const QColor& colour) {
  if (!c.options.labels || line.size() < 2) return;
  Label label;
  label.text = map_name(c, f);
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
    if (line.size() > 1) add_letters(c, line, f, colour.darker(c.look.dark ? 100 : 125));
    name(c, line, f, colour.darker(c.look.dark ? 100 : 135));
  }
}

}  // namespace underlawn
