// SPDX-License-Identifier: GPL-3.0-or-later
// Rasters of heights: onto the lot as the library's own tools tell them, thinned, and refused where they are
// no use.
#include <gtest/gtest.h>

#include <cmath>
#include <ctime>
#include <random>

#include "exchange/bring_in.h"
#include "exchange/drawing_json.h"
#include "exchange/map_plane.h"
#include "exchange/read_raster.h"
#include "plan/edits.h"
#include "support/sample_plans.h"

namespace underlawn {

namespace {

// An ESRI ASCII grid: `columns` by `rows` cells of `cell`, lower left corner at (x, y); heights from a plane,
// the cells in `holes` (from the upper left, row by row) without one.
std::string ascii_grid(int columns, int rows, double cell, double x, double y,
                       const std::vector<int>& holes = {}) {
  char head[200];
  std::snprintf(head, sizeof head,
                "ncols %d\nnrows %d\nxllcorner %.12g\nyllcorner %.12g\ncellsize %.12g\nNODATA_value -9999\n",
                columns, rows, x, y, cell);
  std::string text = head;
  for (int i = 0; i < columns * rows; ++i) {
    const bool hole = std::find(holes.begin(), holes.end(), i) != holes.end();
    text += hole ? "-9999" : std::to_string(100 + i % columns + 0.25 * (i / columns));
    text += (i + 1) % columns == 0 ? "\n" : " ";
  }
  return text;
}

Drawing read(const DrawingFile& file) {
  auto drawing = read_drawing(file);
  EXPECT_TRUE(drawing.has_value()) << (drawing ? "" : drawing.error().message());
  return drawing ? *drawing : Drawing();
}

Brought brought(const Drawing& d, const Plan& onto = {}) {
  const auto groups = groups_of(d, {});
  Bringing how;
  how.placement = usual_placement(d, onto, d.unit > 0 ? d.unit : 1);
  return bring_in(onto, d, groups, {Becomes::heights}, how);
}

}  // namespace

// The middle of a cell is half a cell in from the corner the file names (Esri, "Esri ASCII raster format":
// XLLCORNER and YLLCORNER are the lower left corner of the lower left cell; rows run from the top).
TEST(Raster, EveryCellIsAHeightInItsMiddle) {
  const Drawing d = read({"dem.asc", ascii_grid(4, 3, 2, 10, 20, {5}), {}});
  EXPECT_EQ(d.kind, DrawingKind::raster);
  EXPECT_EQ(d.held.at("cells"), 12);
  ASSERT_EQ(d.shapes.size(), 11u);
  EXPECT_EQ(d.shapes[0].points[0], (Point{11, 25}));  // upper left
  EXPECT_EQ(d.shapes[0].heights[0], 100);
  EXPECT_EQ(d.shapes.back().points[0], (Point{17, 21}));  // lower right
  EXPECT_EQ(d.shapes.back().heights[0], 103.5);
  ASSERT_EQ(d.left_out.size(), 1u);
  EXPECT_EQ(d.left_out[0].count, 1);
  EXPECT_EQ(d.raster->step, 1);
  EXPECT_EQ(d.raster->spacing, 2);
  const Brought b = brought(d);
  EXPECT_EQ(b.counts.at(Becomes::heights), 11);
  EXPECT_EQ(b.plan.site.heights.back().height, 103.5);
}

TEST(Raster, MoreCellsThanAPlanHoldsAreThinnedAndEachHeightIsOneOfTheFile) {
  const Drawing d = read({"dem.asc", ascii_grid(400, 300, 1, 0, 0), {}});
  EXPECT_EQ(d.raster->step, 3);  // 133 by 100; every second would be 200 by 150, more than 20,000
  EXPECT_EQ(d.raster->spacing, 3);
  EXPECT_EQ(d.shapes.size(), 133u * 100u);
  for (const Shape& s : d.shapes) {
    const double column = s.points[0].x - 0.5, row = 299.5 - s.points[0].y;
    ASSERT_EQ(s.heights[0], 100 + column + 0.25 * row);
  }
  ASSERT_EQ(d.left_out.size(), 1u);
  EXPECT_EQ(d.left_out[0].count, 400 * 300 - 133 * 100);
}

TEST(Raster, OnlyThePartAboutTheLotIsLookedAt) {
  Plan plan = sample::half_acre();
  plan.map_place = MapPlace{43.07, -89.4, {0, 0}};
  const auto about = circle_round_lot(plan, 10);
  ASSERT_TRUE(about.has_value());
  // 500 by 500 cells of a second of arc.
  DrawingFile file{"dem.asc", ascii_grid(500, 500, 1.0 / 3600, -89.47, 43.0), {}, about};
  file.beside["prj"] =
      "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],"
      "PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";
  const Drawing d = read(file);
  EXPECT_EQ(d.raster->step, 1);
  EXPECT_EQ(d.raster->reach, about->reach);
  EXPECT_LT(d.shapes.size(), 60u);
  ASSERT_TRUE(d.place.has_value());
  // A second of latitude is 30.859 m here (111,132.92 - 559.82 cos 2f + 1.175 cos 4f a degree:
  // gis.stackexchange.com/questions/75528).
  EXPECT_NEAR(d.raster->spacing, 30.86, 0.005);
  file.about->middle = {10, 10};
  EXPECT_EQ(read_drawing(file).error().code, "raster_elsewhere");
}

TEST(Raster, PassesBetweenProcessesUnchanged) {
  const Drawing d = read({"dem.asc", ascii_grid(40, 30, 0.5, 0, 0, {7, 8}), {}});
  const auto again = drawing_from_json(drawing_to_json(d));
  ASSERT_TRUE(again.has_value());
  EXPECT_EQ(*again, d);
}

TEST(Raster, TheSameFileTwiceDoublesNothing) {
  const Drawing d = read({"dem.asc", ascii_grid(20, 20, 1, 0, 0), {}});
  const Brought once = brought(d);
  const Brought twice = brought(d, once.plan);
  EXPECT_FALSE(twice.anything());
  EXPECT_EQ(twice.plan.site.heights.size(), 400u);
  ASSERT_FALSE(twice.left_out.empty());
  EXPECT_EQ(twice.left_out[0].count, 400);
}

TEST(Raster, FiftySpoiledOnesAndSomeEnormousOnesDoNoHarm) {
  std::mt19937 random(7);
  const std::string good = ascii_grid(60, 60, 1, 0, 0, {3});
  for (int round = 0; round < 50; ++round) {
    std::string bad = good;
    if (round % 3 == 0) bad = bad.substr(0, random() % bad.size());
    if (round % 3 == 1)
      for (int i = 0; i < 30; ++i) bad[random() % bad.size()] = static_cast<char>(random());
    if (round % 3 == 2) bad.erase(random() % 100, 1 + random() % 30);
    const std::clock_t from = std::clock();
    const auto d = read_drawing({"dem.asc", bad, {}});
    EXPECT_LT(static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC, 10) << round;
    if (!d) {
      EXPECT_FALSE(d.error().message().empty()) << round;
      continue;
    }
    for (const Shape& s : d->shapes) ASSERT_TRUE(std::isfinite(s.points[0].x)) << round;
  }
  for (const char* size : {"2000000000", "-5", "1e300", "nan", "0"}) {
    const std::string head =
        std::string("ncols ") + size + "\nnrows " + size + "\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2 3\n";
    const auto d = read_drawing({"dem.asc", head, {}});
    // Of 1e300 the library reads the 1.
    EXPECT_LE(d ? d->shapes.size() : 0, 1u) << size;
  }
}

}  // namespace underlawn
