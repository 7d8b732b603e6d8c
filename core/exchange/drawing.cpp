// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/drawing.h"

#include <algorithm>
#include <cmath>

#include "exchange/read_parts.h"

namespace underlawn {

std::string_view kind_name(DrawingKind kind) {
  static constexpr std::string_view kNames[] = {"DXF", "GeoJSON", "GeoPackage", "Shapefile", "KML", "Raster"};
  return kNames[static_cast<int>(kind)];
}

Box extent(const std::vector<Shape>& shapes) {
  constexpr double kFar = 1e300;
  Box box{{kFar, kFar}, {-kFar, -kFar}};
  for (const Shape& s : shapes)
    for (Point p : s.points)
      box = {{std::min(box.low.x, p.x), std::min(box.low.y, p.y)},
             {std::max(box.high.x, p.x), std::max(box.high.y, p.y)}};
  return box;
}

void bring_near(Drawing& drawing) {
  constexpr double kNear = 5000, kStep = 100;
  const Box box = extent(drawing.shapes);
  const auto far = [](double v) { return std::abs(v) > kNear; };
  if (drawing.shapes.empty() || !(far(box.low.x) || far(box.low.y) || far(box.high.x) || far(box.high.y)))
    return;
  drawing.shift = {std::floor(box.low.x / kStep) * kStep, std::floor(box.low.y / kStep) * kStep};
  for (Shape& s : drawing.shapes) {
    for (Point& p : s.points) p = p - drawing.shift;
    for (Ring& hole : s.holes)
      for (Point& p : hole) p = p - drawing.shift;
  }
}

bool ShapeSink::add(Shape shape) {
  points_ += static_cast<long>(shape.points.size());
  for (const Ring& hole : shape.holes) points_ += static_cast<long>(hole.size());
  if (static_cast<long>(drawing_.shapes.size()) >= kMostShapes || points_ > kMostShapePoints) full_ = true;
  if (!full_) drawing_.shapes.push_back(std::move(shape));
  return !full_;
}

int ShapeSink::layer(const std::string& name) {
  const auto [at, fresh] = layers_.emplace(name, static_cast<int>(drawing_.layers.size()));
  if (fresh) drawing_.layers.push_back({name, {}, false});
  return at->second;
}

}  // namespace underlawn
