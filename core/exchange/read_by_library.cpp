// SPDX-License-Identifier: GPL-3.0-or-later
#include <cpl_conv.h>
#include <ogrsf_frmts.h>

#include <algorithm>
#include <memory>

#include "exchange/geometry_in.h"
#include "exchange/library_session.h"
#include "exchange/place_on_earth.h"
#include "exchange/read_parts.h"

namespace underlawn {

namespace {

constexpr int kMostAttributes = 60;

struct CloseDataset {
  void operator()(GDALDataset* d) const { GDALClose(d); }
};
using Dataset = std::unique_ptr<GDALDataset, CloseDataset>;
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
    values.reserve(static_cast<std::size_t>(std::max(fields, 0)));
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

void read_layers(GDALDataset& data, double chord, Drawing& out) {
  ShapeSink sink(out);
  CoordinateSystems systems;
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
