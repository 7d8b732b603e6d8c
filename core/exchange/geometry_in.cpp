// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/geometry_in.h"

#include <ogr_geometry.h>

#include <cmath>
#include <memory>

namespace underlawn {

namespace {

constexpr double kFarthest =
    1e12;                     // of a coordinate; beyond it no two of them can be told apart to a millimetre
constexpr int kDeepest = 32;  // collections within collections

bool sound(const OGRPoint& p) {
  return std::abs(p.getX()) <= kFarthest && std::abs(p.getY()) <= kFarthest;
}

class Collector {
 public:
  explicit Collector(double chord) : chord_(chord) {}
  void add(const OGRGeometry& g, int depth = 0);
  std::vector<Shape> all;

 private:
  void add_line(const OGRSimpleCurve& line);
  void add_polygon(const OGRPolygon& polygon);
  bool take(const OGRSimpleCurve& line, std::vector<Point>& points, std::vector<double>* heights) const;
  double chord_;
};

bool Collector::take(const OGRSimpleCurve& line, std::vector<Point>& points,
                     std::vector<double>* heights) const {
  const bool flat = !line.Is3D();
  bool any = false;
  for (int i = 0; i < line.getNumPoints(); ++i) {
    OGRPoint p;
    line.getPoint(i, &p);
    if (!sound(p)) return false;
    points.push_back({p.getX(), p.getY()});
    if (heights != nullptr && !flat) heights->push_back(std::isfinite(p.getZ()) ? p.getZ() : 0);
    any = any || (!flat && p.getZ() != 0);
  }
  if (heights != nullptr && !any) heights->clear();
  return true;
}

void Collector::add_line(const OGRSimpleCurve& line) {
  Shape s;
  if (take(line, s.points, &s.heights) && s.points.size() >= 2) all.push_back(std::move(s));
}

void without_closing_point(Ring& ring) {
  if (ring.size() > 1 && ring.front() == ring.back()) ring.pop_back();
}

void Collector::add_polygon(const OGRPolygon& polygon) {
  const OGRLinearRing* outer = polygon.getExteriorRing();
  Shape s;
  s.kind = ShapeKind::area;
  if (outer == nullptr || !take(*outer, s.points, &s.heights)) return;
  without_closing_point(s.points);
  if (s.points.size() < 3) return;
  if (s.heights.size() > s.points.size()) s.heights.pop_back();
  for (int i = 0; i < polygon.getNumInteriorRings(); ++i) {
    Ring hole;
    if (!take(*polygon.getInteriorRing(i), hole, nullptr)) continue;
    without_closing_point(hole);
    if (hole.size() >= 3) s.holes.push_back(std::move(hole));
  }
  all.push_back(std::move(s));
}

void Collector::add(const OGRGeometry& g, int depth) {
  if (depth > kDeepest || g.IsEmpty()) return;
  if (g.hasCurveGeometry()) {
    const std::unique_ptr<OGRGeometry> chords(g.getLinearGeometry(chord_));
    if (chords && !chords->hasCurveGeometry()) add(*chords, depth + 1);
    return;
  }
  switch (wkbFlatten(g.getGeometryType())) {
    case wkbPoint: {
      const OGRPoint& p = *g.toPoint();
      if (!sound(p)) return;
      Shape s;
      s.kind = ShapeKind::point;
      s.points = {{p.getX(), p.getY()}};
      if (p.Is3D() && p.getZ() != 0 && std::isfinite(p.getZ())) s.heights = {p.getZ()};
      return all.push_back(std::move(s));
    }
    case wkbLineString:
      return add_line(*g.toLineString());
    case wkbPolygon:
    case wkbTriangle:
      return add_polygon(*g.toPolygon());
    case wkbMultiPoint:
    case wkbMultiLineString:
    case wkbMultiPolygon:
    case wkbGeometryCollection:
      for (const OGRGeometry* part : *g.toGeometryCollection()) add(*part, depth + 1);
      return;
    case wkbPolyhedralSurface:
    case wkbTIN:
      for (const OGRPolygon* part : *g.toPolyhedralSurface()) add_polygon(*part);
      return;
    default:
      return;
  }
}

}  // namespace

std::vector<Shape> shapes_of(const OGRGeometry& geometry, double chord_degrees) {
  Collector collector(chord_degrees);
  collector.add(geometry);
  return std::move(collector.all);
}

}  // namespace underlawn
