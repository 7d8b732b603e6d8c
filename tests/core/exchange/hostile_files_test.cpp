// SPDX-License-Identifier: GPL-3.0-or-later
// Fifty broken or hostile files of each kind: a message or a drawing, never harm, inside bounded time.
#include <gtest/gtest.h>

#include <cmath>
#include <ctime>
#include <random>

#include "exchange/bring_in.h"
#include "exchange/export_plan.h"
#include "support/drawing_files.h"
#include "support/sample_plans.h"

namespace underlawn {

namespace {

constexpr double kMostSeconds = 10;  // of the processor, for one file

// What every reader has to keep to, whatever the bytes.
void judge(const DrawingFile& file, const std::string& what) {
  const std::clock_t from = std::clock();
  const auto drawing = read_drawing(file);
  const double took = static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC;
  EXPECT_LT(took, kMostSeconds) << what;
  if (!drawing) {
    EXPECT_FALSE(drawing.error().message().empty()) << what;
    return;
  }
  EXPECT_LE(static_cast<long>(drawing->shapes.size()), kMostShapes) << what;
  for (const Shape& s : drawing->shapes) {
    ASSERT_LT(static_cast<std::size_t>(s.layer), drawing->layers.size()) << what;
    for (Point p : s.points) ASSERT_TRUE(std::isfinite(p.x) && std::isfinite(p.y)) << what;
  }
  // And on to the lot, as whatever it would be taken for.
  const auto groups = groups_of(*drawing, {});
  std::vector<Becomes> becomes;
  for (std::size_t i = 0; i < groups.size(); ++i) becomes.push_back(static_cast<Becomes>(i % kBecomes));
  Bringing how;
  how.placement = usual_placement(*drawing, Plan(), 0.3048);
  bring_in(Plan(), *drawing, groups, becomes, how);
}

// Cut short, with bytes changed, with pieces doubled or taken out.
std::string spoiled(const std::string& good, std::mt19937& random, int round) {
  std::string bad = good;
  const auto at = [&](std::size_t size) { return size == 0 ? 0 : random() % size; };
  if (round % 5 == 0) return bad.substr(0, at(bad.size()));
  if (round % 5 == 1)
    for (int i = 0; i < 20; ++i) bad[at(bad.size())] = static_cast<char>(random());
  if (round % 5 == 2) {
    const std::size_t from = at(bad.size());
    bad.insert(from, bad.substr(at(bad.size()), 400));
  }
  if (round % 5 == 3) bad.erase(at(bad.size()), 1 + at(300));
  if (round % 5 == 4)
    for (int i = 0; i < 8; ++i) bad.replace(at(bad.size() - 8), 4, "\xff\xff\xff\x7f");
  return bad;
}

void spoil(const DrawingFile& good, unsigned seed) {
  std::mt19937 random(seed);
  for (int round = 0; round < 50; ++round) {
    DrawingFile bad = good;
    bad.bytes = spoiled(good.bytes, random, round);
    for (auto& [ending, bytes] : bad.beside)
      if (round % 3 == 0) bytes = spoiled(bytes, random, round);
    judge(bad, good.name + " round " + std::to_string(round) + " of seed " + std::to_string(seed));
  }
}

std::string repeated(const std::string& text, int times) {
  std::string all;
  for (int i = 0; i < times; ++i) all += text;
  return all;
}

}  // namespace

TEST(HostileFiles, Dxf) {
  spoil({"a.dxf", sample::dxf_text(sample::in_order(sample::surveyed_lot())), {}}, 1);
  for (const char* far : {"1e300", "-1e308", "nan", "inf", "1e999", "", "zwölf", "0x10", "1,5"}) {
    judge({"a.dxf",
           sample::dxf_text(
               sample::dxf_drawing({{0, "LINE"}, {8, "0"}, {10, far}, {20, "0"}, {11, "5"}, {21, far}})),
           {}},
          far);
    judge({"a.dxf",
           sample::dxf_text(sample::dxf_drawing(
               {{0, "ARC"}, {8, "0"}, {10, "0"}, {20, "0"}, {40, far}, {50, far}, {51, "9"}})),
           {}},
          far);
    judge({"a.dxf",
           sample::dxf_text(sample::dxf_drawing({{0, "LWPOLYLINE"},
                                                 {8, "0"},
                                                 {90, far},
                                                 {70, "1"},
                                                 {10, "0"},
                                                 {20, far},
                                                 {42, far},
                                                 {10, "1"},
                                                 {20, "1"}})),
           {}},
          far);
    judge({"a.dxf",
           sample::dxf_text(sample::dxf_drawing({{0, "SPLINE"},
                                                 {8, "0"},
                                                 {71, far},
                                                 {72, "99999999"},
                                                 {73, far},
                                                 {40, "0"},
                                                 {10, "0"},
                                                 {20, far}})),
           {}},
          far);
    judge({"a.dxf",
           sample::dxf_text(sample::dxf_drawing(
               {{0, "HATCH"}, {8, "0"}, {91, far}, {92, "1"}, {93, "2147483647"}, {72, "2"}, {10, far}})),
           {}},
          far);
  }
  judge({"a.dxf",
         sample::dxf_text(
             sample::dxf_drawing({{0, "INSERT"}, {8, "0"}, {2, "none"}, {70, "30000"}, {71, "30000"}})),
         {}},
        "array");
}

TEST(HostileFiles, BinaryDxf) {
  spoil({"b.dxf", sample::dxf_binary(sample::in_order(sample::surveyed_lot())), {}}, 2);
}

TEST(HostileFiles, GeoJson) {
  spoil({"a.geojson", sample::parcels_geojson(), {}}, 3);
  const auto with = [](const std::string& geometry) {
    return DrawingFile{
        "a.geojson",
        R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":{},"geometry":)" +
            geometry + "}]}",
        {}};
  };
  judge(with(repeated("[", 100'000)), "nested lists");
  judge(with(R"({"type":"GeometryCollection","geometries":)" +
             repeated(R"([{"type":"GeometryCollection","geometries":)", 5000)),
        "nested collections");
  judge(with(R"({"type":"Polygon","coordinates":[[[1e300,1e300],[-1e300,0],[0,1e308],[1e300,1e300]]]})"),
        "far");
  judge(with(R"({"type":"Point","coordinates":[]})"), "no coordinates");
  judge(with(R"({"type":"Point","coordinates":["a",null]})"), "words");
  judge(with(R"({"type":"LineString","coordinates":[[0,0],[0,0]]})"), "no length");
  judge(
      {"a.geojson",
       R"({"type":"FeatureCollection","crs":{"type":"link","properties":{"href":"http://example.invalid/crs"}},"features":[]})",
       {}},
      "link");
  judge({"a.geojson", R"({"type":"Topology","arcs":[[[0,0]]],"objects":{}})", {}}, "other");
}

TEST(HostileFiles, Kml) {
  spoil({"a.kml", sample::parcels_kml(), {}}, 4);
  std::string bomb = "<?xml version=\"1.0\"?><!DOCTYPE kml [<!ENTITY a0 \"ha\">";
  for (int i = 1; i < 20; ++i)
    bomb +=
        "<!ENTITY a" + std::to_string(i) + " \"" + repeated("&a" + std::to_string(i - 1) + ";", 20) + "\">";
  judge({"a.kml",
         bomb + "]><kml "
                "xmlns=\"http://www.opengis.net/kml/2.2\"><Document><Placemark><name>&a19;</"
                "name><Point><coordinates>1,2</coordinates></Point></Placemark></Document></kml>",
         {}},
        "entities");
  judge({"a.kml", "<kml xmlns=\"http://www.opengis.net/kml/2.2\">" + repeated("<Folder>", 20'000), {}},
        "folders");
  judge({"a.kml",
         "<?xml version=\"1.0\"?><!DOCTYPE kml [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><kml "
         "xmlns=\"http://www.opengis.net/kml/2.2\"><Document><Placemark><name>&x;</"
         "name><Point><coordinates>1,2</coordinates></Point></Placemark></Document></kml>",
         {}},
        "outside");
}

TEST(HostileFiles, Shapefile) {
  spoil(sample::square_parcels_shp(), 5);
}

TEST(HostileFiles, GeoPackage) {
  Plan plan = sample::half_acre();
  plan.map_place = MapPlace{43.07, -89.4, {0, 0}};
  const auto good = exported(ExportForm::geopackage, plan, export_parts(plan, {}, {}));
  ASSERT_TRUE(good.has_value());
  spoil({"a.gpkg", *good, {}}, 6);
}

TEST(HostileFiles, WhatIsNoDrawingIsCalledByItsName) {
  const auto refusal = [](const std::string& name, const std::string& bytes) {
    const auto d = read_drawing({name, bytes, {}});
    return d ? std::string("read") : d.error().message();
  };
  EXPECT_NE(refusal("a.kmz", "PK\x03\x04 doc.kml").find("Unpack"), std::string::npos);
  EXPECT_NE(refusal("a.dwg", "AC1032 and so on").find("DWG"), std::string::npos);
  EXPECT_NE(refusal("a.dxf", "\x89PNG\r\n").find("picture"), std::string::npos);
  EXPECT_NE(refusal("a.dxf", "").find("empty"), std::string::npos);
  EXPECT_NE(refusal("a.dxf", std::string(4000, char(0))).find("no DXF"), std::string::npos);
  EXPECT_NE(refusal("a.geojson",
                    "<OGRVRTDataSource><OGRVRTLayer "
                    "name=\"x\"><SrcDataSource>/etc/passwd</SrcDataSource></OGRVRTLayer></OGRVRTDataSource>"),
            "read");
}

}  // namespace underlawn
