// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/drawing_files.h"

#include <cstdint>
#include <cstring>

namespace underlawn::sample {

namespace {

std::string number(double v) {
  char text[40];
  std::snprintf(text, sizeof text, "%.12g", v);
  return text;
}

void add(DxfValues& to, const DxfValues& more) {
  to.insert(to.end(), more.begin(), more.end());
}

DxfValues section(const std::string& name, const DxfValues& inside) {
  DxfValues all = {{0, "SECTION"}, {2, name}};
  add(all, inside);
  all.push_back({0, "ENDSEC"});
  return all;
}

DxfValues layer_table(const std::vector<std::string>& names) {
  DxfValues all = {{0, "TABLE"}, {2, "LAYER"}, {70, std::to_string(names.size())}};
  for (const std::string& name : names)
    add(all, {{0, "LAYER"}, {2, name}, {70, "0"}, {62, "7"}, {6, "CONTINUOUS"}});
  all.push_back({0, "ENDTAB"});
  return all;
}

DxfValues header(int units) {
  return {{9, "$ACADVER"},  {1, "AC1015"},    {9, "$DWGCODEPAGE"},
          {3, "ANSI_1252"}, {9, "$INSUNITS"}, {70, std::to_string(units)}};
}

template <class T>
void put(std::string& to, T value) {
  char bytes[sizeof(T)];
  std::memcpy(bytes, &value, sizeof(T));
  to.append(bytes, sizeof(T));
}

void put_big(std::string& to, std::uint32_t v) {
  for (int shift = 24; shift >= 0; shift -= 8) to += static_cast<char>(v >> shift & 255U);
}

std::string polygon_record(int number_, double x) {
  std::string content;
  put<std::int32_t>(content, 5);
  for (double v : {x, 0.0, x + 40, 40.0}) put(content, v);
  put<std::int32_t>(content, 1);
  put<std::int32_t>(content, 5);
  put<std::int32_t>(content, 0);
  for (const auto& [px, py] : {std::pair{x, 0.0}, {x, 40.0}, {x + 40, 40.0}, {x + 40, 0.0}, {x, 0.0}}) {
    put(content, px);
    put(content, py);
  }
  std::string record;
  put_big(record, static_cast<std::uint32_t>(number_));
  put_big(record, static_cast<std::uint32_t>(content.size() / 2));
  return record + content;
}

}  // namespace

DxfValues dxf_line(const std::string& layer, Point a, Point b) {
  return {{0, "LINE"},       {8, layer},        {10, number(a.x)},
          {20, number(a.y)}, {11, number(b.x)}, {21, number(b.y)}};
}

DxfParts surveyed_lot() {
  DxfParts p;
  p.header = header(2);
  p.tables = layer_table({"V-PROP-LINE", "V-BLDG-OTLN", "V-SITE-VEGE", "V-NGAS-UNDR", "Straße"});
  p.blocks = {{0, "BLOCK"}, {8, "0"},  {2, "OAK"}, {70, "0"},     {10, "0"},   {20, "0"}, {0, "CIRCLE"},
              {8, "0"},     {10, "0"}, {20, "0"},  {40, "2"},     {0, "LINE"}, {8, "0"},  {10, "-2"},
              {20, "0"},    {11, "2"}, {21, "0"},  {0, "ENDBLK"}, {8, "0"}};
  DxfValues& e = p.entities;
  add(e, dxf_line("V-PROP-LINE", {0, 0}, {200, 0}));
  add(e, dxf_line("V-PROP-LINE", {200, 150}, {200, 0}));
  add(e, dxf_line("V-PROP-LINE", {200, 150}, {20, 150}));
  add(e, {{0, "ARC"}, {8, "V-PROP-LINE"}, {10, "20"}, {20, "130"}, {40, "20"}, {50, "90"}, {51, "180"}});
  add(e, dxf_line("V-PROP-LINE", {0, 130}, {0, 0}));
  add(e, {{0, "LWPOLYLINE"},
          {100, "AcDbEntity"},
          {8, "V-BLDG-OTLN"},
          {100, "AcDbPolyline"},
          {90, "4"},
          {70, "1"},
          {10, "40"},
          {20, "40"},
          {10, "90"},
          {20, "40"},
          {42, "0.5"},
          {10, "90"},
          {20, "70"},
          {10, "40"},
          {20, "70"}});
  add(e, {{0, "INSERT"}, {8, "V-SITE-VEGE"}, {2, "OAK"}, {10, "150"}, {20, "100"}});
  add(e, {{0, "INSERT"},
          {8, "V-SITE-VEGE"},
          {2, "OAK"},
          {10, "160"},
          {20, "30"},
          {41, "2"},
          {42, "2"},
          {50, "30"}});
  add(e, dxf_line("V-NGAS-UNDR", {0, 75}, {40, 60}));
  add(e, {{0, "TEXT"}, {8, "V-PROP-LINE-TEXT"}, {10, "100"}, {20, "-5"}, {40, "3"}, {1, "N 90 E 200.00'"}});
  add(e, {{0, "DIMENSION"}, {8, "DIMS"}, {10, "0"}, {20, "0"}, {70, "0"}});
  add(e, {{0, "POINT"}, {8, "V-TOPO-SPOT"}, {10, "10"}, {20, "10"}, {30, "312.5"}});
  add(e, dxf_line("Straße", {1, 1}, {2, 2}));
  return p;
}

DxfValues in_order(const DxfParts& p) {
  DxfValues all = section("HEADER", p.header);
  add(all, section("TABLES", p.tables));
  add(all, section("BLOCKS", p.blocks));
  add(all, section("ENTITIES", p.entities));
  all.push_back({0, "EOF"});
  return all;
}

DxfValues blocks_first(const DxfParts& p) {
  DxfValues all = section("BLOCKS", p.blocks);
  add(all, section("HEADER", p.header));
  add(all, section("TABLES", p.tables));
  add(all, section("ENTITIES", p.entities));
  all.push_back({0, "EOF"});
  return all;
}

DxfValues dxf_drawing(const DxfValues& entities, int units) {
  return in_order({header(units), layer_table({"0"}), {}, entities});
}

std::string dxf_text(const DxfValues& values, const std::string& line_end) {
  std::string text;
  for (const auto& [code, value] : values) text += "  " + std::to_string(code) + line_end + value + line_end;
  return text;
}

std::string dxf_binary(const DxfValues& values) {
  std::string out("AutoCAD Binary DXF\r\n\x1a\0", 22);
  for (const auto& [code, value] : values) {
    put(out, static_cast<std::int16_t>(code));
    if (code >= 10 && code <= 59)
      put(out, std::stod(value));
    else if (code >= 60 && code <= 79)
      put(out, static_cast<std::int16_t>(std::stoi(value)));
    else if (code >= 90 && code <= 99)
      put(out, static_cast<std::int32_t>(std::stoi(value)));
    else
      out += value + '\0';
  }
  return out;
}

std::string parcels_geojson() {
  return R"({"type":"FeatureCollection","features":[
{"type":"Feature","properties":{"type":"parcel","name":"Lot 14"},"geometry":{"type":"Polygon","coordinates":[[[-89.4000,43.0700],[-89.3990,43.0700],[-89.3990,43.0705],[-89.4000,43.0705],[-89.4000,43.0700]]]}},
{"type":"Feature","properties":{"type":"parcel","name":"Lot 15"},"geometry":{"type":"Polygon","coordinates":[[[-89.3990,43.0700],[-89.3980,43.0700],[-89.3980,43.0705],[-89.3990,43.0705],[-89.3990,43.0700]]]}},
{"type":"Feature","properties":{"type":"building","name":null},"geometry":{"type":"Polygon","coordinates":[[[-89.39960,43.07020],[-89.39940,43.07020],[-89.39940,43.07030],[-89.39960,43.07030],[-89.39960,43.07020]]]}},
{"type":"Feature","properties":{"type":"tree","name":"Oak"},"geometry":{"type":"Point","coordinates":[-89.39970,43.07045]}},
{"type":"Feature","properties":{"type":"gas main","name":""},"geometry":{"type":"LineString","coordinates":[[-89.4001,43.06995],[-89.3979,43.06995]]}}
]})";
}

std::string parcels_kml() {
  return R"(<?xml version="1.0" encoding="UTF-8"?>
<kml xmlns="http://www.opengis.net/kml/2.2"><Document><Folder><name>site</name>
<Placemark><name>parcel</name><Polygon><outerBoundaryIs><LinearRing><coordinates>-89.4,43.07 -89.399,43.07 -89.399,43.0705 -89.4,43.0705 -89.4,43.07</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark>
<Placemark><name>house</name><Polygon><outerBoundaryIs><LinearRing><coordinates>-89.3996,43.0702 -89.3994,43.0702 -89.3994,43.0703 -89.3996,43.0703 -89.3996,43.0702</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark>
<Placemark><name>tree</name><Point><coordinates>-89.3997,43.07045</coordinates></Point></Placemark>
</Folder></Document></kml>)";
}

DrawingFile square_parcels_shp() {
  const std::string records = polygon_record(1, 0) + polygon_record(2, 40);
  std::string shp;
  put_big(shp, 9994);
  for (int i = 0; i < 5; ++i) put_big(shp, 0);
  put_big(shp, static_cast<std::uint32_t>((100 + records.size()) / 2));
  put<std::int32_t>(shp, 1000);
  put<std::int32_t>(shp, 5);
  for (double v : {0.0, 0.0, 80.0, 40.0, 0.0, 0.0, 0.0, 0.0}) put(shp, v);
  std::string dbf;
  dbf += '\x03';
  dbf += std::string("\x7e\x01\x01", 3);
  put<std::int32_t>(dbf, 2);
  put<std::int16_t>(dbf, 32 + 32 + 1);
  put<std::int16_t>(dbf, 1 + 10);
  dbf += std::string(20, '\0');
  std::string field = "KIND";
  field.resize(11, '\0');
  field += 'C';
  field += std::string(4, '\0');
  field += '\x0a';
  field.resize(32, '\0');
  dbf += field + '\x0d' + " parcel    " + " parcel    " + '\x1a';
  return {"parcels.shp", shp + records, {{"dbf", dbf}}};
}

}  // namespace underlawn::sample
