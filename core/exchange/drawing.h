// SPDX-License-Identifier: GPL-3.0-or-later
// A drawing file as it was read: plain data, nothing decided yet about what it means for the lot.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "site/map_place.h"

namespace underlawn {

enum class DrawingKind { dxf, geojson, geopackage, shapefile, kml, raster };
std::string_view kind_name(DrawingKind kind);  // "DXF"

enum class ShapeKind { point, line, area };

struct Shape {
  ShapeKind kind = ShapeKind::line;
  std::vector<Point> points;        // one point, a line, or the outline without its first point again
  std::vector<Ring> holes;          // of an area
  std::vector<double> heights;      // of each point, in the drawing's unit; none where it is flat at 0
  int layer = 0;                    // index in Drawing::layers
  std::string text;                 // what is written there, of a text
  std::vector<std::string> values;  // of DrawingLayer::attributes, in their order
  bool operator==(const Shape&) const = default;
};

struct DrawingLayer {
  std::string name;
  std::vector<std::string> attributes;
  bool hidden = false;  // off or frozen in the file
  bool operator==(const DrawingLayer&) const = default;
};

// What the file holds that is not among the shapes, and why.
struct LeftOut {
  std::string what;  // "DIMENSION"
  long count = 0;
  std::string why;
  bool operator==(const LeftOut&) const = default;
};

// What was taken of a raster of heights, every so many-th column and row.
struct RasterTaken {
  long columns = 0, rows = 0;  // of the file
  long step = 1;
  double spacing = 0;            // between the heights taken, in the drawing's unit
  double reach = 0;              // m about the place that was asked for; 0: the whole was looked at
  double height_unit = 0;        // m per unit of the heights; 0 where the file does not say
  std::string height_unit_name;  // as the file says it
  bool operator==(const RasterTaken&) const = default;
};

struct Drawing {
  DrawingKind kind = DrawingKind::dxf;
  std::string reader;  // "GDAL 3.6.2", "dxflib 3.26"
  std::vector<DrawingLayer> layers;
  std::vector<Shape> shapes;

  // Metres per unit of the coordinates; 0 where the file does not say. What a file says is often wrong: it is
  // for the designer to confirm.
  double unit = 0;
  std::string unit_name;  // "feet"; empty where unit is 0
  // Where the drawing's (0, 0) lies on the Earth, when the file says; coordinates are then metres of the
  // plane that MapPlace describes, with north up.
  std::optional<MapPlace> place;
  std::string system;  // the file's own coordinate system, "NAD83 / Wisconsin South (ftUS)"; may be empty
  Point shift;         // taken off the file's coordinates, in its unit, so that they are of a lot's size

  std::map<std::string, long>
      held;           // what the file holds, by kind, counted by us in its bytes (DXF) or said by it
  long expected = 0;  // shapes that must arrive, blocks resolved; texts not counted
  long arrived = 0;   // of these, how many did
  std::vector<LeftOut> left_out;
  std::vector<Trouble> remarks;
  std::optional<RasterTaken> raster;
  double tolerance = 0;  // in the drawing's unit: how far chords may lie off the arcs they stand for
  bool operator==(const Drawing&) const = default;
};

inline constexpr long kMostShapes = 200'000;
inline constexpr long kMostShapePoints = 2'000'000;
inline constexpr double kArcTolerance = 0.005;  // m on the ground
inline constexpr std::size_t kMostDrawingBytes = 100'000'000;

Box extent(const std::vector<Shape>& shapes);  // low above high where there are none

}  // namespace underlawn
