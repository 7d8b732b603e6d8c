// SPDX-License-Identifier: GPL-3.0-or-later
// The ground itself: lot, setbacks, buildable ground, lot line with its lengths.
#include <algorithm>
#include <cmath>

#include "base/quantity.h"
#include "canvas/bearing.h"
#include "canvas/paint_context.h"
#include "plane/region.h"

namespace underlawn {

namespace {

constexpr std::size_t kMostEdgesForBand = 200;  // beyond, the band would cost more than a frame

// The longest that has room along the edge; with bearings its number too, by which the permit plan's tables
// call it, and that alone rather than nothing.
QString edge_text(const PaintContext& c, std::size_t i, Point along, const QFont& font, double room) {
  const QString size = QString::fromStdString(print_quantity(Quantity::length, norm(along), c.plan.units));
  QStringList texts{size};
  if (c.options.bearings) {
    const QString number = QObject::tr("Edge %1", "of the lot").arg(i + 1);
    const QString full = number + "   " + size;
    texts = {full + "   " + quarter_bearing(along, c.plan.site.north), full, number};
  }
  for (const QString& text : texts)
    if (room >= text_size(text, font).width() + font.pixelSize()) return text;
  return {};
}

// Along the edge, outside the lot, upright.
void label_edge(PaintContext& c, const Ring& lot, std::size_t i, bool counter_clockwise) {
  const Point a = lot[i], b = lot[(i + 1) % lot.size()];
  const QPointF start = c.at(a), end = c.at(b);
  QLineF edge(start, end);
  Label label;
  label.font = c.font();
  label.text = edge_text(c, i, b - a, label.font, edge.length());
  if (label.text.isEmpty()) return;
  QPointF out(-edge.dy() / edge.length(), edge.dx() / edge.length());
  if (!counter_clockwise) out = -out;
  double angle = -edge.angle();
  if (std::cos(angle * M_PI / 180) < -1e-9) angle += 180;
  label.colour = c.look.dimension;
  label.angle = angle;
  // By its number the tables of the permit plan call it: there it is never left out.
  label.must = c.options.bearings;
  label.rank = label.must ? 1 : 2;
  label.anchor = edge.pointAt(0.5);
  const double off = 0.95 * label.font.pixelSize() + 2 * c.look.line;
  for (double side : {1.0, -1.0})
    for (double along : {0.5, 0.38, 0.62, 0.25, 0.75})
      label.places.push_back(edge.pointAt(along) + side * off * out);
  c.labels.add(std::move(label));
}

// The ground within the setback of an edge.
Region setback_band(const Site& site) {
  const Ring lot = lot_ring(site);
  std::vector<Region> strips;
  for (std::size_t i = 0; i < lot.size(); ++i) {
    const Polyline edge{lot[i], lot[(i + 1) % lot.size()]};
    if (site.lot[i].setback > 0 && length(edge) > kSamePlace)
      strips.push_back(buffered(edge, site.lot[i].setback));
  }
  return intersect(unite(strips), region_of(lot));
}

// Kept, as only what moves the lot's line changes them, and each is boolean geometry.
struct Setbacks {
  std::vector<LotCorner> of;
  Region band, inside;
};

const Setbacks& setbacks_of(const Site& site) {
  static thread_local Setbacks last;
  if (last.of == site.lot) return last;
  Region band = setback_band(site);
  Region inside = subtract(region_of(lot_ring(site)), band);
  return last = {site.lot, std::move(band), std::move(inside)};
}

bool sound(const Ring& lot) {
  return lot.size() >= 3 && lot.size() <= kMostEdgesForBand && checked_ring(lot, "lot").has_value();
}

bool all_inside(const QPolygonF& lot, const QVector<QPolygonF>& rings) {
  return std::all_of(rings.begin(), rings.end(), [&](const QPolygonF& ring) {
    return std::all_of(ring.begin(), ring.end(),
                       [&](const QPointF& p) { return lot.containsPoint(p, Qt::OddEvenFill); });
  });
}

// So that a drag does not begin and end with a flash. Of an earlier lot: within this one's line; clipping to
// a slanting line is dear, and as a rule it needs none.
void paint_pale_ground(PaintContext& c, const QPolygonF& lot) {
  QColor pale = c.look.buildable;
  pale.setAlphaF(0.5F);
  const Region& buildable = c.outcome->layout.buildable;
  c.painter.save();
  if (!all_inside(lot, c.rings(buildable))) {
    QPainterPath within;
    within.addPolygon(lot);
    within.closeSubpath();
    c.painter.setClipPath(within, Qt::IntersectClip);
  }
  c.painter.setBrush(pale);
  c.painter.drawPath(c.path(buildable));
  c.painter.restore();
}

}  // namespace

void paint_ground(PaintContext& c) {
  const QPolygonF lot = c.line(lot_ring(c.plan.site));
  c.painter.setPen(Qt::NoPen);
  c.painter.setBrush(c.look.ground);
  c.painter.drawPolygon(lot);
  if (!c.options.zones || c.outcome == nullptr) return;
  if (c.options.stale) return paint_pale_ground(c, lot);
  c.painter.setBrush(c.look.buildable);
  // On paper its edge is drawn too: so pale a green is white in grey.
  if (c.options.sheet) c.painter.setPen(c.pen(c.look.tree, 0.5));
  c.painter.drawPath(c.path(c.outcome->layout.buildable));
}

void paint_setbacks(PaintContext& c) {
  const Ring lot = lot_ring(c.plan.site);
  if (!c.options.zones || !sound(lot)) return;
  const Setbacks& setbacks = setbacks_of(c.plan.site);
  QColor faint = c.look.setback;
  faint.setAlphaF(0.55);
  c.hatch(c.rings(setbacks.band), 7, 45, c.pen(faint, 0.45));
  c.painter.setBrush(Qt::NoBrush);
  c.painter.setPen(c.dashed(c.look.setback, 0.8, {7, 4}));
  c.painter.drawPath(c.path(setbacks.inside));
}

void paint_lot_line(PaintContext& c) {
  const Ring lot = lot_ring(c.plan.site);
  const QPolygonF line = c.line(lot);
  if (line.size() < 2) return;
  c.painter.setBrush(Qt::NoBrush);
  c.painter.setPen(c.dashed(c.look.lot_line, 2.2, {26, 4, 4, 4, 4, 4}));
  for (int i = 0; i < line.size(); ++i) c.painter.drawLine(line[i], line[(i + 1) % line.size()]);
  c.painter.setPen(c.pen(c.look.lot_line, 1.3));
  c.painter.setBrush(c.look.ground);
  for (const QPointF& p : line) c.painter.drawEllipse(p, 3.2 * c.look.line, 3.2 * c.look.line);
  QPolygonF closed = line;
  closed.push_back(line.front());
  c.labels.avoid(closed);
  if (!c.options.edge_lengths || lot.size() < 3 || static_cast<std::size_t>(line.size()) != lot.size())
    return;
  double twice_area = 0;
  for (std::size_t i = 0; i < lot.size(); ++i) twice_area += cross(lot[i], lot[(i + 1) % lot.size()]);
  for (std::size_t i = 0; i < lot.size(); ++i) label_edge(c, lot, i, twice_area > 0);
}

}  // namespace underlawn
