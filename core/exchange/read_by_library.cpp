// SPDX-License-Identifier: GPL-3.0-or-later
#include <cpl_conv.h>
#include <ogrsf_frmts.h>

#include <algorithm>
#include <cmath>
#include <memory>

#include "base/say.h"
#include "base/utf8.h"
#include "exchange/geometry_in.h"
#include "exchange/library_session.h"
#include "exchange/plane_system.h"
#include "exchange/read_parts.h"

namespace underlawn {

namespace {

constexpr int kMostAttributes = 60;
constexpr std::size_t kLongestValue = 200;

struct CloseDataset {
  void operator()(GDALDataset* d) const { GDALClose(d); }
};
using Dataset = std::unique_ptr<GDALDataset, CloseDataset>;
using System = std::unique_ptr<OGRSpatialReference>;

std::string short_text(const char* text) {
  std::string out = valid_utf8(text == nullptr ? "" : text);
  if (out.size() <= kLongestValue) return out;
  return valid_utf8(out.substr(0, kLongestValue));
}

// ---- DXF: one layer of the library, the drawing's layers in a field ----

void read_dxf_features(OGRLayer& all, double chord, Drawing& out) {
  ShapeSink sink(out);
  const OGRFeatureDefn& fields = *all.GetLayerDefn();
  const int layer_field = fields.GetFieldIndex("Layer"), text_field = fields.GetFieldIndex("Text");
  while (const std::unique_ptr<OGRFeature> f{all.GetNextFeature()}) {
    const std::string text = text_field < 0 ? "" : short_text(f->GetFieldAsString(text_field));
    const OGRGeometry* g = f->GetGeometryRef();
    if (g == nullptr) continue;
    auto shapes = shapes_of(*g, chord);
    if (text.empty() && !shapes.empty()) ++out.arrived;
    const int layer = sink.layer(layer_field < 0 ? "0" : short_text(f->GetFieldAsString(layer_field)));
    for (Shape& s : shapes) {
      s.layer = layer;
      s.text = text;
      if (!sink.add(std::move(s))) return;
    }
  }
}

// ---- the others: layers with attributes and a coordinate system ----

std::vector<std::string> names_of(const OGRFeatureDefn& fields) {
  std::vector<std::string> names;
  for (int i = 0; i < std::min(fields.GetFieldCount(), kMostAttributes); ++i)
    names.push_back(short_text(fields.GetFieldDefn(i)->GetNameRef()));
  return names;
}

void read_layer(OGRLayer& layer, double chord, ShapeSink& sink, Drawing& out) {
  const std::string name = short_text(layer.GetName());
  const int index = static_cast<int>(out.layers.size());
  out.layers.push_back({name, names_of(*layer.GetLayerDefn()), false});
  const auto fields = static_cast<int>(out.layers.back().attributes.size());
  long count = 0;
  while (const std::unique_ptr<OGRFeature> f{layer.GetNextFeature()}) {
    ++count;
    const OGRGeometry* g = f->GetGeometryRef();
    auto shapes = g == nullptr ? std::vector<Shape>() : shapes_of(*g, chord);
    if (!shapes.empty()) ++out.arrived;
    std::vector<std::string> values;
    for (int i = 0; i < fields; ++i) values.push_back(short_text(f->GetFieldAsString(i)));
    for (Shape& s : shapes) {
      s.layer = index;
      s.values = values;
      if (!sink.add(std::move(s))) return;
    }
  }
  out.held[name] += count;
  out.expected += count;
}

// Every point of every shape of a layer, so that they are transformed in one go.
template <class Do>
void each_point(Drawing& out, int layer, Do&& act) {
  for (Shape& s : out.shapes) {
    if (s.layer != layer) continue;
    for (Point& p : s.points) act(p);
    for (Ring& hole : s.holes)
      for (Point& p : hole) act(p);
  }
}

void to_world(Drawing& out, int layer, const OGRSpatialReference& system) {
  const OGRSpatialReference world = world_system();
  const std::unique_ptr<OGRCoordinateTransformation> change(
      OGRCreateCoordinateTransformation(&system, &world));
  std::vector<double> x, y;
  each_point(out, layer, [&](Point& p) {
    x.push_back(p.x);
    y.push_back(p.y);
  });
  std::vector<int> good(x.size(), 0);
  if (change && !x.empty())
    change->Transform(static_cast<int>(x.size()), x.data(), y.data(), nullptr, good.data());
  std::size_t i = 0;
  each_point(out, layer, [&](Point& p) {
    p = good[i] != 0 ? Point{x[i], y[i]} : Point{std::nan(""), std::nan("")};
    ++i;
  });
}

void drop_lost(Drawing& out) {
  const auto lost = [](const Point& p) { return !std::isfinite(p.x) || !std::isfinite(p.y); };
  long count = 0;
  std::erase_if(out.shapes, [&](const Shape& s) {
    bool any = std::ranges::any_of(s.points, lost);
    for (const Ring& hole : s.holes) any = any || std::ranges::any_of(hole, lost);
    count += any ? 1 : 0;
    return any;
  });
  if (count > 0)
    out.left_out.push_back({say("shape"), count, say("lies outside what its coordinate system can tell")});
  out.arrived = std::max(0L, out.arrived - count);
}

LatLon middle_of(const Drawing& out) {
  const Box box = extent(out.shapes);
  // Rounded to whole seconds of arc, so that a place reads well and is the same for all layers of a survey.
  const auto rounded = [](double degrees) { return std::round(degrees * 3600) / 3600; };
  return {rounded((box.low.y + box.high.y) / 2), rounded((box.low.x + box.high.x) / 2)};
}

void to_lot_plane(Drawing& out) {
  drop_lost(out);
  if (out.shapes.empty()) return;
  const LatLon about = middle_of(out);
  const OGRSpatialReference world = world_system(), plane = plane_system(about);
  const std::unique_ptr<OGRCoordinateTransformation> change(
      OGRCreateCoordinateTransformation(&world, &plane));
  for (int layer = 0; layer < static_cast<int>(out.layers.size()); ++layer)
    each_point(out, layer, [&](Point& p) {
      if (!change || !change->Transform(1, &p.x, &p.y)) p = {std::nan(""), std::nan("")};
    });
  drop_lost(out);
  out.place = MapPlace{about.latitude, about.longitude, {0, 0}};
  out.unit = 1;
  out.unit_name = mark("metres");
}

bool on_earth(const OGRSpatialReference* s) {
  return s != nullptr && (s->IsGeographic() || s->IsProjected());
}

bool looks_like_degrees(const Box& b) {
  return b.low.x >= -180 && b.high.x <= 180 && b.low.y >= -90 && b.high.y <= 90 && b.high.x - b.low.x < 1 &&
         b.high.y - b.low.y < 1 && std::abs(b.low.x) > 1 && std::abs(b.low.y) > 1;
}

// GeoJSON is in degrees by its standard (RFC 7946); some programs write other numbers all the same.
bool says_wrongly_degrees(const Drawing& out, const OGRSpatialReference& system) {
  const Box b = extent(out.shapes);
  return out.kind == DrawingKind::geojson && system.IsGeographic() &&
         (b.low.x < -360 || b.high.x > 360 || b.low.y < -90 || b.high.y > 90);
}

void remark(Drawing& out, const char* code, const std::string& thing, const std::string& advice) {
  out.remarks.push_back({code, thing, "", "", advice});
}

void place_on_earth(Drawing& out, std::vector<System>& systems) {
  if (out.shapes.empty()) return;
  const auto first = std::ranges::find_if(systems, [](const System& s) { return on_earth(s.get()); });
  if (first == systems.end() && looks_like_degrees(extent(out.shapes))) {
    remark(out, "degrees_assumed",
           say("the file names no coordinate system and its numbers look like degrees"),
           say("They were taken as longitude and latitude (WGS 84); check a length on the drawing."));
    out.system = mark("WGS 84, assumed");
    for (int i = 0; i < static_cast<int>(systems.size()); ++i) to_world(out, i, world_system());
    return to_lot_plane(out);
  }
  if (first != systems.end() && says_wrongly_degrees(out, **first)) {
    remark(out, "no_degrees", say("the file's coordinates are no degrees, as GeoJSON has to be"),
           say("They were taken as plain lengths; set the scale."));
    return bring_near(out);
  }
  if (first == systems.end()) {
    const OGRSpatialReference* local = systems.empty() ? nullptr : systems.front().get();
    const char* unit = nullptr;
    if (local != nullptr) out.unit = local->GetLinearUnits(&unit);
    out.unit_name = unit == nullptr ? "" : unit;
    return bring_near(out);
  }
  const char* name = (*first)->GetName();
  out.system = name == nullptr ? "" : short_text(name);
  for (int i = 0; i < static_cast<int>(systems.size()); ++i)
    to_world(out, i,
             on_earth(systems[static_cast<std::size_t>(i)].get()) ? *systems[static_cast<std::size_t>(i)]
                                                                  : **first);
  to_lot_plane(out);
}

void read_layers(GDALDataset& data, double chord, Drawing& out) {
  ShapeSink sink(out);
  std::vector<System> systems;
  for (OGRLayer* layer : data.GetLayers()) {
    const OGRSpatialReference* system = layer->GetSpatialRef();
    systems.emplace_back(system == nullptr ? nullptr : system->Clone());
    if (systems.back()) systems.back()->SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
    read_layer(*layer, chord, sink, out);
    if (sink.full()) break;
  }
  place_on_earth(out, systems);
}

}  // namespace

bool read_by_library(LibrarySession& session, const std::string& path, const char* driver, double chord,
                     Drawing& out) {
  session.set("OGR_ARC_STEPSIZE", std::to_string(chord));
  const char* drivers[] = {driver, nullptr};
  const Dataset data(
      GDALDataset::Open(path.c_str(), GDAL_OF_VECTOR | GDAL_OF_READONLY, drivers, nullptr, nullptr));
  if (!data) return false;
  out.reader = library_version();
  if (out.kind != DrawingKind::dxf)
    read_layers(*data, chord, out);
  else if (OGRLayer* all = data->GetLayerByName("entities"))
    read_dxf_features(*all, chord, out);
  return true;
}

}  // namespace underlawn
