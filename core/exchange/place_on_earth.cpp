// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/place_on_earth.h"

#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "base/utf8.h"
#include "exchange/plane_system.h"
#include "exchange/read_parts.h"

namespace underlawn {

namespace {

constexpr std::size_t kLongestValue = 200;

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

}  // namespace

std::string short_text(const char* text) {
  std::string out = valid_utf8(text == nullptr ? "" : text);
  if (out.size() <= kLongestValue) return out;
  return valid_utf8(out.substr(0, kLongestValue));
}

void place_on_earth(Drawing& out, CoordinateSystems& systems) {
  if (out.shapes.empty()) return;
  const auto first = std::ranges::find_if(systems, [](const auto& s) { return on_earth(s.get()); });
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

}  // namespace underlawn
