// SPDX-License-Identifier: GPL-3.0-or-later
#include <ogrsf_frmts.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>

#include "base/say.h"
#include "exchange/export_plan.h"
#include "exchange/library_session.h"
#include "exchange/map_plane.h"
#include "exchange/plane_system.h"

namespace underlawn {

namespace {

struct CloseDataset {
  void operator()(GDALDataset* d) const { GDALClose(d); }
};
using Dataset = std::unique_ptr<GDALDataset, CloseDataset>;
using Geometry = std::unique_ptr<OGRGeometry>;

Geometry geometry_of(const ExportPart& part, const std::vector<Point>& points) {
  if (part.kind == ShapeKind::point) {
    auto p = std::make_unique<OGRPoint>(points[0].x, points[0].y);
    if (part.height != 0) p->setZ(part.height);
    return p;
  }
  auto line = part.kind == ShapeKind::area ? std::unique_ptr<OGRLineString>(new OGRLinearRing)
                                           : std::make_unique<OGRLineString>();
  for (Point p : points) line->addPoint(p.x, p.y);
  if (part.kind != ShapeKind::area) return line;
  line->addPoint(points[0].x, points[0].y);
  auto polygon = std::make_unique<OGRPolygon>();
  polygon->addRingDirectly(line.release()->toLinearRing());
  return polygon;
}

OGRwkbGeometryType type_of(const std::vector<const ExportPart*>& parts) {
  const ShapeKind kind = parts.front()->kind;
  if (!std::ranges::all_of(parts, [&](const ExportPart* p) { return p->kind == kind; })) return wkbUnknown;
  if (parts.front()->table == "heights") return wkbPoint25D;
  return kind == ShapeKind::point ? wkbPoint : kind == ShapeKind::line ? wkbLineString : wkbPolygon;
}

class MapOut {
 public:
  MapOut(GDALDataset& data, const Plan& plan, bool degrees) : data_(data), plan_(plan), degrees_(degrees) {
    if (!plan.map_place) {
      system_.SetLocalCS("Undefined Cartesian");
      system_.SetLinearUnits("metre", 1);
    } else {
      system_ =
          degrees ? world_system() : plane_system({plan.map_place->latitude, plan.map_place->longitude});
    }
  }

  bool layer(const std::string& name, const std::vector<const ExportPart*>& parts) {
    const char* standard[] = {"RFC7946=YES", "COORDINATE_PRECISION=9", nullptr};  // a tenth of a millimetre
    OGRLayer* layer = data_.CreateLayer(name.c_str(), &system_, type_of(parts),
                                        degrees_ ? const_cast<char**>(standard) : nullptr);
    if (layer == nullptr) return false;
    add_fields(*layer, parts);
    return std::ranges::all_of(parts, [&](const ExportPart* p) { return add(*layer, *p); });
  }

 private:
  static void add_fields(OGRLayer& layer, const std::vector<const ExportPart*>& parts) {
    for (const ExportPart* p : parts)
      for (const Attribute& a : p->attributes) {
        if (layer.GetLayerDefn()->GetFieldIndex(a.name.c_str()) >= 0) continue;
        const OGRFieldType type = std::holds_alternative<double>(a.value) ? OFTReal
                                  : std::holds_alternative<int>(a.value)  ? OFTInteger
                                                                          : OFTString;
        OGRFieldDefn field(a.name.c_str(), type);
        layer.CreateField(&field);
      }
  }
  std::vector<Point> placed(const std::vector<Point>& points) const {
    if (!plan_.map_place) return points;
    std::vector<Point> out;
    if (degrees_) {
      for (const LatLon& p : from_plan(*plan_.map_place, plan_.site.north, points))
        out.push_back({p.longitude, p.latitude});
      return out;
    }
    for (Point p : points)
      out.push_back(rotated(p - plan_.map_place->at, 1.5707963267948966 - plan_.site.north));
    return out;
  }
  bool add(OGRLayer& layer, const ExportPart& part) const {
    const auto points = placed(part.points);
    if (points.empty() || !std::ranges::all_of(points, [](Point p) { return std::isfinite(p.x + p.y); }))
      return false;
    OGRFeature feature(layer.GetLayerDefn());
    for (const Attribute& a : part.attributes) {
      if (const auto* number = std::get_if<double>(&a.value))
        feature.SetField(a.name.c_str(), *number);
      else if (const auto* whole = std::get_if<int>(&a.value))
        feature.SetField(a.name.c_str(), *whole);
      else
        feature.SetField(a.name.c_str(), std::get<std::string>(a.value).c_str());
    }
    feature.SetGeometry(geometry_of(part, points).get());
    return layer.CreateFeature(&feature) == OGRERR_NONE;
  }

  GDALDataset& data_;
  const Plan& plan_;
  bool degrees_;
  OGRSpatialReference system_;
};

// GeoJSON has one list for all; what a part belongs to is then an attribute of it.
std::vector<ExportPart> with_table_named(std::vector<ExportPart> parts) {
  for (ExportPart& p : parts) p.attributes.insert(p.attributes.begin(), Attribute{"part", p.table});
  return parts;
}

std::vector<std::pair<std::string, std::vector<const ExportPart*>>> by_table(
    const std::vector<ExportPart>& parts, bool one) {
  std::vector<std::pair<std::string, std::vector<const ExportPart*>>> tables;
  for (const ExportPart& p : parts) {
    const std::string name = one ? "plan" : p.table;
    auto at = std::ranges::find(tables, name, &std::pair<std::string, std::vector<const ExportPart*>>::first);
    if (at == tables.end()) at = tables.insert(tables.end(), {name, {}});
    at->second.push_back(&p);
  }
  return tables;
}

Trouble failed(const LibrarySession& session) {
  return {"export_failed", say("the file cannot be made"), "", "",
          session.messages().empty()
              ? say("Check that the plan's coordinates are sound.")
              : say("Check that the plan's coordinates are sound. {}", session.messages().front())};
}

}  // namespace

Result<std::string> to_map_file(ExportForm form, const Plan& plan, const std::vector<ExportPart>& given) {
  const bool json = form == ExportForm::geojson;
  if (json && !plan.map_place)
    return refuse(
        {"no_map_place",
         say("the plan does not know where on the Earth it lies, and GeoJSON has no other coordinates"), "",
         "",
         say("Bring in a drawing with coordinates, or tie the plan by GPS points; or write DXF or "
             "GeoPackage.")});
  LibrarySession session;
  // The same plan gives the same bytes.
  session.set("OGR_CURRENT_DATE", "2000-01-01T00:00:00.000Z");
  const std::string name = json ? "plan.geojson" : "plan.gpkg";
  const auto parts = json ? with_table_named(given) : given;
  {
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName(json ? "GeoJSON" : "GPKG");
    const Dataset data(driver == nullptr
                           ? nullptr
                           : driver->Create(session.path_of(name).c_str(), 0, 0, 0, GDT_Unknown, nullptr));
    if (!data) return refuse(failed(session));
    MapOut out(*data, plan, json);
    for (const auto& [table, of_it] : by_table(parts, json))
      if (!out.layer(table, of_it)) return refuse(failed(session));
  }
  std::string bytes = session.take(name);
  if (bytes.empty()) return refuse(failed(session));
  return bytes;
}

}  // namespace underlawn
