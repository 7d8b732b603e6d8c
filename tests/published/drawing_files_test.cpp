// SPDX-License-Identifier: GPL-3.0-or-later
// Drawing files and coordinates against the outside: PROJ's own published test values, and what GDAL's own
// tool says of the same files.
#include "support/drawing_files.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "exchange/export_plan.h"
#include "exchange/map_plane.h"
#include "exchange/read_drawing.h"
#include "plan/solve.h"
#include "plane/region.h"
#include "support/sample_plans.h"

namespace underlawn {

namespace {

namespace fs = std::filesystem;

std::string output_of(const std::string& command) {
  std::string out;
  FILE* pipe = popen((command + " 2>/dev/null").c_str(), "r");
  if (pipe == nullptr) return out;
  std::array<char, 4096> piece{};
  while (const std::size_t n = fread(piece.data(), 1, piece.size(), pipe)) out.append(piece.data(), n);
  pclose(pipe);
  return out;
}

class Folder {
 public:
  Folder() : path_(fs::temp_directory_path() / ("underlawn-outside-" + std::to_string(getpid()))) {
    fs::create_directories(path_);
  }
  ~Folder() { fs::remove_all(path_); }
  std::string file(const std::string& name, const std::string& bytes) const {
    std::ofstream(path_ / name, std::ios::binary) << bytes;
    return (path_ / name).string();
  }

 private:
  fs::path path_;
};

double number_behind(const std::string& text, const std::string& words) {
  const auto at = text.find(words);
  return at == std::string::npos ? std::nan("") : std::stod(text.substr(at + words.size()));
}

long features_by_ogrinfo(const std::string& path, const std::string& options = "") {
  const std::string said = output_of("ogrinfo -al -so '" + path + "' " + options);
  long all = 0;
  for (std::size_t at = 0; (at = said.find("Feature Count: ", at)) != std::string::npos; ++at)
    all += std::stol(said.substr(at + 15));
  return all;
}

double area_of(const Drawing& d, const std::string& layer = "") {
  double all = 0;
  for (const Shape& s : d.shapes)
    if (s.kind == ShapeKind::area &&
        (layer.empty() || d.layers[static_cast<std::size_t>(s.layer)].name == layer))
      all += area(s.points);
  return all;
}

bool has_ogrinfo() {
  return !output_of("ogrinfo --version").empty();
}

}  // namespace

// PROJ, test/gie/builtins.gie, "+proj=tmerc +ellps=GRS80": accept 2 1, expect 222650.796797586
// 110642.229411933 (and with either sign). GRS 80 and WGS 84 differ by 0.1 mm in the semi-minor axis.
TEST(Projection, AgreesWithThePublishedTestValuesOfProj) {
  const double e = 222650.796797586, n = 110642.229411933;
  const auto points = to_plane({0, 0}, {{1, 2}, {-1, 2}, {1, -2}, {-1, -2}});
  const Point expected[] = {{e, n}, {e, -n}, {-e, n}, {-e, -n}};
  for (int i = 0; i < 4; ++i)
    EXPECT_NEAR(distance(points[static_cast<std::size_t>(i)], expected[i]), 0, 1e-3) << i;
  const auto back = from_plane({0, 0}, points);
  EXPECT_NEAR(back[0].latitude, 1, 1e-9);
  EXPECT_NEAR(back[0].longitude, 2, 1e-9);
}

// A degree of the meridian at 45 degrees and of the parallel at 60 on WGS 84, by the series printed at
// gis.stackexchange.com/questions/75528: 111,132.92 - 559.82 cos 2f + 1.175 cos 4f and 111,412.84 cos f
// - 93.5 cos 3f + 0.118 cos 5f give 111,131.7 m of latitude at 45 and 55,800.0 m of longitude at 60.
TEST(Projection, ADegreeIsAsLongAsItIs) {
  EXPECT_NEAR(to_plane({44.5, 10}, {{45.5, 10}})[0].y, 111'132, 20);
  EXPECT_NEAR(to_plane({60, 10}, {{60, 10.01}})[0].x, 558.02, 0.1);
}

TEST(Projection, ThePlanTurnsWithItsNorth) {
  const MapPlace place{43.07, -89.4, {100, 50}};
  for (double north : {1.5707963267948966, 0.3, 3.0}) {
    const auto points = to_plan(place, north, {{43.07, -89.4}, {43.071, -89.4}});
    EXPECT_NEAR(distance(points[0], place.at), 0, 1e-6);
    const Point way = points[1] - points[0];
    EXPECT_NEAR(std::atan2(way.y, way.x), north, 1e-9);
    const auto back = from_plan(place, north, points);
    EXPECT_NEAR(back[1].latitude, 43.071, 1e-10);
  }
}

// The tool of the library reads this DXF file as it is; its count has the text too.
TEST(OutsideTool, CountsAndExtentOfADxfAgreeWithOgrinfo) {
  if (!has_ogrinfo()) GTEST_SKIP() << "ogrinfo is not installed";
  const Folder folder;
  sample::DxfParts parts = sample::surveyed_lot();
  const auto dimension = std::ranges::find(parts.entities, sample::DxfValue{0, "DIMENSION"});
  parts.entities.erase(dimension, dimension + 5);
  const std::string path = folder.file("lot.dxf", sample::dxf_text(sample::in_order(parts)));
  const auto d = read_drawing(*load_drawing_file(path));
  ASSERT_TRUE(d.has_value());
  const std::string said =
      output_of("ogrinfo -al -so '" + path + "' --config DXF_MERGE_BLOCK_GEOMETRIES FALSE");
  long texts = 0;
  for (const Shape& s : d->shapes) texts += s.text.empty() ? 0 : 1;
  EXPECT_EQ(number_behind(said, "Feature Count: "), d->arrived + texts);
  const Box box = extent(d->shapes);
  double x0 = 0, y0 = 0, x1 = 0, y1 = 0;
  ASSERT_EQ(std::sscanf(said.c_str() + said.find("Extent: "), "Extent: (%lf, %lf) - (%lf, %lf)", &x0, &y0,
                        &x1, &y1),
            4);
  EXPECT_NEAR(box.low.x, x0, 1e-6);
  EXPECT_NEAR(box.low.y, y0, 1e-6);
  EXPECT_NEAR(box.high.x, x1, 1e-6);
  EXPECT_NEAR(box.high.y, y1, 1e-6);
}

// Areas: the tool's own, in a transverse Mercator about the middle of the file, set up by ogr2ogr.
TEST(OutsideTool, CountsAndAreasOfAParcelFileAgreeWithOgrinfo) {
  if (!has_ogrinfo()) GTEST_SKIP() << "ogrinfo is not installed";
  const Folder folder;
  const std::string json = folder.file("site.geojson", sample::parcels_geojson());
  for (const char* form : {"GPKG", "KML", "ESRI Shapefile"}) {
    const std::string ending = form == std::string("GPKG")  ? ".gpkg"
                               : form == std::string("KML") ? ".kml"
                                                            : ".shp";
    const std::string path = json + ending;
    output_of("ogr2ogr -f '" + std::string(form) + "' -nlt PROMOTE_TO_MULTI -where \"type='parcel'\" '" +
              path + "' '" + json + "'");
    const auto d = read_drawing(*load_drawing_file(path));
    ASSERT_TRUE(d.has_value()) << form << ": " << d.error().message();
    EXPECT_EQ(d->arrived, features_by_ogrinfo(path)) << form;
    ASSERT_TRUE(d->place.has_value()) << form;
    const std::string about = "+proj=tmerc +lat_0=" + std::to_string(d->place->latitude) +
                              " +lon_0=" + std::to_string(d->place->longitude) +
                              " +k=1 +datum=WGS84 +units=m";
    const std::string flat = path + ".flat.gpkg";
    output_of("ogr2ogr -f GPKG -nln flat -t_srs '" + about + "' '" + flat + "' '" + path + "'");
    const double theirs = number_behind(
        output_of("ogrinfo '" + flat + "' -sql 'SELECT SUM(ST_Area(geom)) AS a FROM flat'"), "a (Real) = ");
    EXPECT_NEAR(area_of(*d), theirs, 1e-6 * theirs) << form;
    EXPECT_GT(theirs, 1000) << form;
  }
}

// KML files that come with Debian's libkml-dev, made by others; counts by ogrinfo's KML driver.
TEST(OutsideTool, CountsOfKmlFilesMadeByOthersAgreeWithOgrinfo) {
  const fs::path examples = "/usr/share/doc/libkml-dev/examples/kml";
  if (!has_ogrinfo() || !fs::exists(examples)) GTEST_SKIP() << "no examples here";
  int compared = 0;
  for (const char* name : {"kmlsamples.kml", "polygons2d.kml"}) {
    const auto d = read_drawing(*load_drawing_file(examples / name));
    ASSERT_TRUE(d.has_value()) << name;
    EXPECT_EQ(d->arrived, features_by_ogrinfo(examples / name, "--config OGR_SKIP LIBKML")) << name;
    ++compared;
  }
  EXPECT_EQ(compared, 2);
}

// What we write as DXF, read by the tool of the library: the lot's extent in feet, every layer by name.
TEST(OutsideTool, ReadsOurDxf) {
  if (!has_ogrinfo()) GTEST_SKIP() << "ogrinfo is not installed";
  const Folder folder;
  const Plan plan = sample::half_acre();
  const Outcome outcome = solve(plan);
  const auto parts = export_parts(plan, outcome.layout, outcome.stake_out);
  const std::string path = folder.file("plan.dxf", *exported(ExportForm::dxf, plan, parts));
  const std::string said = output_of("ogrinfo -al '" + path + "'");
  for (const ExportPart& p : parts)
    EXPECT_NE(said.find("Layer (String) = " + p.layer), std::string::npos) << p.layer;
  const std::string lot = output_of("ogrinfo -al -so '" + path + "' -where \"Layer='V-PROP-LINE'\"");
  double x0 = 0, y0 = 0, x1 = 0, y1 = 0;
  ASSERT_EQ(
      std::sscanf(lot.c_str() + lot.find("Extent: "), "Extent: (%lf, %lf) - (%lf, %lf)", &x0, &y0, &x1, &y1),
      4);
  const Box box = bounds(lot_ring(plan.site));
  EXPECT_NEAR(x1 - x0, (box.high.x - box.low.x) / 0.3048, 1e-4);
  EXPECT_NEAR(y1 - y0, (box.high.y - box.low.y) / 0.3048, 1e-4);
}

}  // namespace underlawn
