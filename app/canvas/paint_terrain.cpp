// SPDX-License-Identifier: GPL-3.0-or-later
// How high the ground is: contours with their heights, steep ground tinted, and the spots that were measured.
#include "canvas/paint_context.h"
#include "site/terrain.h"

namespace underlawn {

namespace {

constexpr int kContours = 12;            // at most, between the lowest and the highest spot
constexpr double kSteepest = 0.5;        // m per m that is tinted fully
constexpr double kLabelled = 90;         // device pixels that a contour is long at least to carry its height
constexpr std::size_t kMostSpots = 400;  // marked one by one

// The smallest of 1, 2, 2.5, 5 times a power of ten, in the plan's own unit, that gives at most kContours
// lines.
double interval(const Terrain& terrain, UnitSystem units) {
  const double unit = units == UnitSystem::us ? 0.3048 : 1;
  const double least = (terrain.highest() - terrain.lowest()) / kContours / unit;
  if (!(least > 1e-4)) return 0;
  const double ten = std::pow(10, std::floor(std::log10(least)));
  for (double step : {1.0, 2.0, 2.5, 5.0, 10.0})
    if (step * ten >= least) return step * ten * unit;
  return 10 * ten * unit;
}

QColor earth(const Look& look) {
  return look.dark ? QColor("#c9a27a") : QColor("#7a5230");
}

void tint_steepness(PaintContext& c, const Terrain& terrain) {
  c.painter.save();
  c.painter.setRenderHint(QPainter::Antialiasing, false);
  c.painter.setPen(Qt::NoPen);
  for (const Triangle& t : terrain.triangles()) {
    std::vector<Point> corners;
    for (int k : t.corners) corners.push_back(terrain.heights()[static_cast<std::size_t>(k)].at);
    const Point middle = 1.0 / 3 * (corners[0] + corners[1] + corners[2]);
    QColor tint = earth(c.look);
    tint.setAlphaF(static_cast<float>(0.32 * std::min(1.0, norm(terrain.steepest(middle)) / kSteepest)));
    c.painter.setBrush(tint);
    c.painter.drawPolygon(c.line(corners));
  }
  c.painter.restore();
}

QString shown(const PaintContext& c, double height) {
  return QString::fromStdString(print_quantity(Quantity::length, height, c.plan.units));
}

void label_contour(PaintContext& c, const QPolygonF& line, double height) {
  double long_ = 0;
  for (int i = 1; i < line.size(); ++i) long_ += QLineF(line[i - 1], line[i]).length();
  if (!c.options.labels || long_ < kLabelled * c.look.line) return;
  Label label;
  label.text = shown(c, height);
  label.font = c.font(0.85);
  label.colour = earth(c.look);
  const auto count = line.size();
  for (qsizetype k : {count / 2, count / 4, 3 * count / 4}) label.places << line[std::min(k, count - 1)];
  label.rank = 7;
  c.labels.add(std::move(label));
}

void paint_contours(PaintContext& c, const Terrain& terrain) {
  QColor ink = earth(c.look);
  ink.setAlphaF(0.75F);
  c.painter.setBrush(Qt::NoBrush);
  c.painter.setPen(c.pen(ink, 0.8));
  for (const Contour& contour : contours(terrain, interval(terrain, c.plan.units))) {
    const QPolygonF line = c.line(contour.line);
    c.painter.drawPolyline(line);
    label_contour(c, line, contour.height);
  }
}

void label_spot(PaintContext& c, QPointF at, double height) {
  Label label;
  label.text = shown(c, height);
  label.font = c.font(0.85);
  label.colour = c.look.text;
  label.places = places_around(at, {4 * c.look.line, 4 * c.look.line}, label.text, label.font, 1);
  label.rank = 8;
  c.labels.add(std::move(label));
}

}  // namespace

// From the plan, not the outcome: it is there as soon as heights are.
void paint_terrain(PaintContext& c) {
  if (!c.options.heights || c.plan.site.heights.size() < 2) return;
  const bool solved = c.outcome != nullptr && c.outcome->terrain != nullptr &&
                      c.outcome->terrain->heights() == c.plan.site.heights;
  const Terrain made = solved ? Terrain() : Terrain(c.plan.site.heights);
  const Terrain& terrain = solved ? *c.outcome->terrain : made;
  tint_steepness(c, terrain);
  paint_contours(c, terrain);
}

void paint_spot_heights(PaintContext& c) {
  if (!c.options.heights || c.plan.site.heights.size() > kMostSpots) return;
  for (const SpotHeight& h : c.plan.site.heights) {
    const QPointF at = c.at(h.at);
    if (!c.device().adjusted(-20, -20, 20, 20).contains(at)) continue;
    const double r = 3.2 * c.look.line;
    c.painter.setPen(c.pen(earth(c.look), 1.3));
    c.painter.drawLine(at - QPointF(r, r), at + QPointF(r, r));
    c.painter.drawLine(at - QPointF(r, -r), at + QPointF(r, -r));
    if (c.options.labels) label_spot(c, at, h.height);
  }
}

}  // namespace underlawn
