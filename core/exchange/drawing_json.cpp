// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/drawing_json.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/say.h"

namespace underlawn {

namespace {

using Json = nlohmann::ordered_json;

Json flat(const std::vector<Point>& points) {
  Json all = Json::array();
  for (Point p : points) {
    all.push_back(p.x);
    all.push_back(p.y);
  }
  return all;
}

std::vector<Point> points_of(const Json& all) {
  std::vector<Point> points;
  for (std::size_t i = 0; i + 1 < all.size(); i += 2)
    points.push_back({all[i].get<double>(), all[i + 1].get<double>()});
  return points;
}

Json json_of(const Shape& s) {
  Json j = {{"k", static_cast<int>(s.kind)}, {"l", s.layer}, {"p", flat(s.points)}};
  for (const Ring& hole : s.holes) j["o"].push_back(flat(hole));
  if (!s.heights.empty()) j["z"] = s.heights;
  if (!s.text.empty()) j["t"] = s.text;
  if (!s.values.empty()) j["v"] = s.values;
  return j;
}

Shape shape_of(const Json& j, std::size_t layers) {
  Shape s;
  s.kind = static_cast<ShapeKind>(std::clamp(j.at("k").get<int>(), 0, 2));
  s.layer = j.at("l").get<int>();
  s.points = points_of(j.at("p"));
  if (s.layer < 0 || static_cast<std::size_t>(s.layer) >= layers || s.points.empty())
    throw nlohmann::json::other_error::create(501, "a shape of no layer", nullptr);
  if (j.contains("o"))
    for (const Json& hole : j.at("o")) s.holes.push_back(points_of(hole));
  if (j.contains("z")) s.heights = j.at("z").get<std::vector<double>>();
  if (j.contains("t")) s.text = j.at("t").get<std::string>();
  if (j.contains("v")) s.values = j.at("v").get<std::vector<std::string>>();
  return s;
}

Json json_of(const Trouble& t) {
  return {{"code", t.code}, {"thing", t.thing}, {"value", t.value}, {"bound", t.bound}, {"advice", t.advice}};
}

Trouble trouble_of(const Json& j) {
  return {j.at("code"), j.at("thing"), j.at("value"), j.at("bound"), j.at("advice")};
}

Json json_of(const RasterTaken& r) {
  return {{"columns", r.columns},
          {"rows", r.rows},
          {"step", r.step},
          {"spacing", r.spacing},
          {"reach", r.reach},
          {"height_unit", r.height_unit},
          {"height_unit_name", r.height_unit_name}};
}

RasterTaken raster_of(const Json& j) {
  return {j.at("columns"),         j.at("rows"),  j.at("step"),
          j.at("spacing"),         j.at("reach"), j.at("height_unit"),
          j.at("height_unit_name")};
}

Drawing drawing_of(const Json& j) {
  Drawing d;
  d.kind = static_cast<DrawingKind>(std::clamp(j.at("kind").get<int>(), 0, 5));
  d.reader = j.at("reader");
  for (const Json& l : j.at("layers"))
    d.layers.push_back({l.at("name"), l.at("attributes").get<std::vector<std::string>>(), l.at("hidden")});
  for (const Json& s : j.at("shapes")) d.shapes.push_back(shape_of(s, d.layers.size()));
  d.unit = j.at("unit");
  d.unit_name = j.at("unit_name");
  if (j.contains("place"))
    d.place = MapPlace{j["place"].at(0), j["place"].at(1), {j["place"].at(2), j["place"].at(3)}};
  d.system = j.at("system");
  d.shift = {j.at("shift").at(0), j.at("shift").at(1)};
  d.held = j.at("held").get<std::map<std::string, long>>();
  d.expected = j.at("expected");
  d.arrived = j.at("arrived");
  for (const Json& l : j.at("left_out")) d.left_out.push_back({l.at("what"), l.at("count"), l.at("why")});
  for (const Json& r : j.at("remarks")) d.remarks.push_back(trouble_of(r));
  d.tolerance = j.at("tolerance");
  if (j.contains("raster")) d.raster = raster_of(j.at("raster"));
  return d;
}

}  // namespace

std::string drawing_to_json(const Drawing& d) {
  Json j = {{"kind", static_cast<int>(d.kind)}, {"reader", d.reader}};
  j["layers"] = Json::array();
  for (const DrawingLayer& l : d.layers)
    j["layers"].push_back({{"name", l.name}, {"attributes", l.attributes}, {"hidden", l.hidden}});
  j["unit"] = d.unit;
  j["unit_name"] = d.unit_name;
  if (d.place) j["place"] = {d.place->latitude, d.place->longitude, d.place->at.x, d.place->at.y};
  j["system"] = d.system;
  j["shift"] = {d.shift.x, d.shift.y};
  j["held"] = d.held;
  j["expected"] = d.expected;
  j["arrived"] = d.arrived;
  j["left_out"] = Json::array();
  for (const LeftOut& l : d.left_out)
    j["left_out"].push_back({{"what", l.what}, {"count", l.count}, {"why", l.why}});
  j["remarks"] = Json::array();
  for (const Trouble& r : d.remarks) j["remarks"].push_back(json_of(r));
  j["tolerance"] = d.tolerance;
  if (d.raster) j["raster"] = json_of(*d.raster);
  j["shapes"] = Json::array();
  for (const Shape& s : d.shapes) j["shapes"].push_back(json_of(s));
  return j.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string trouble_to_json(const Trouble& trouble) {
  return Json{{"trouble", json_of(trouble)}}.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Result<Drawing> drawing_from_json(std::string_view text) {
  try {
    const Json j = Json::parse(text);
    if (j.contains("trouble")) return refuse(trouble_of(j.at("trouble")));
    return drawing_of(j);
  } catch (const nlohmann::json::exception&) {
    return refuse(
        {"drawing_not_read", say("the file cannot be read"), "", "",
         say("Its reader gave up on it: it is damaged, or far too large. Save it again, or only the "
             "part with the lot.")});
  }
}

}  // namespace underlawn
