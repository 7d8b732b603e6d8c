// SPDX-License-Identifier: GPL-3.0-or-later
// The plan for other programs: DXF for whoever draws, GeoJSON and GeoPackage for whoever maps.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "exchange/drawing.h"
#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

enum class ExportForm { dxf, geojson, geopackage };
std::optional<ExportForm> export_form(std::string_view word);  // "dxf", "geojson", "gpkg"
std::string_view ending_of(ExportForm form);                   // ".dxf"

struct Attribute {
  std::string name;  // with its unit: "depth_m"
  std::variant<double, int, std::string> value;
};

// One thing of the plan. Its table is "lot", "features", "trenches", "coils", "header", "run", "stakes",
// "heights".
struct ExportPart {
  std::string table;
  std::string layer;  // of a DXF file
  ShapeKind kind = ShapeKind::line;
  std::vector<Point> points;  // m, in the plan
  std::string label;          // written beside it in a DXF file
  std::vector<Attribute> attributes;
  double height = 0;  // m, of spot heights
};

// Layers of a DXF file: names of the US National CAD Standard (discipline, major and minor group; from
// memory) where it has one for the thing; the loop's, which it has not, are formed by its rules: M-LOOP-TRCH
// trench floors, -COIL pipe, -HEAD header, -MAIN supply run, -STAK stakes.
std::vector<ExportPart> export_parts(const Plan& plan, const Layout& layout, const StakeOut& stakes);

// The whole file. DXF is AC1015 text in feet (US plans) or metres, and says so in $INSUNITS. GeoJSON (RFC
// 7946) and GeoPackage are in longitude and latitude, and in the lot's plane, where the plan knows its place
// on the Earth. Without a place GeoJSON is refused, for it has no other coordinates; GeoPackage is in metres
// of an undefined Cartesian system.
Result<std::string> exported(ExportForm form, const Plan& plan, const std::vector<ExportPart>& parts);

Result<std::string> to_dxf(const std::vector<ExportPart>& parts, UnitSystem units);
Result<std::string> to_map_file(ExportForm form, const Plan& plan, const std::vector<ExportPart>& parts);

}  // namespace underlawn
