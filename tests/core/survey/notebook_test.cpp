// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/notebook.h"

#include <gtest/gtest.h>

#include <numbers>

using namespace underlawn;

namespace {

using std::numbers::pi;

Sighting two(std::string name, std::string from, double a, std::string to, double b, bool left) {
  Sighting s;
  s.name = std::move(name);
  s.from = std::move(from);
  s.to = std::move(to);
  s.first = a;
  s.second = b;
  s.left = left;
  return s;
}

NotebookSetting setting() {
  return {{{"lot 1", {0, 0}}, {"lot 2", {50, 0}}, {"house A", {10, 20}}},
          MapPlace{45, 10, {100, 200}},
          pi / 2,
          UnitSystem::metric};
}

std::vector<PlacedSighting> placed(std::vector<Sighting> notebook, NotebookSetting by = setting()) {
  Survey survey;
  survey.notebook = std::move(notebook);
  return place_notebook(survey, by);
}

}  // namespace

TEST(Notebook, TwoTapesGiveThePointOnTheChosenSide) {
  const auto p =
      placed({two("P1", "lot 1", 30, "Lot 2", 40, true), two("P2", "lot 1", 30, "lot 2", 40, false)});
  ASSERT_TRUE(p[0].at && p[1].at);
  EXPECT_NEAR(p[0].at->x, 18, 1e-9);  // a 3-4-5 triangle on its long side
  EXPECT_NEAR(p[0].at->y, 24, 1e-9);
  EXPECT_NEAR(p[1].at->y, -24, 1e-9);
  EXPECT_NEAR(*p[0].cut, pi / 2, 1e-9);
}

TEST(Notebook, StationOffsetAndBearingDistance) {
  Sighting station = two("S", "lot 1", 20, "lot 2", 5, false);
  station.method = SightingMethod::station_offset;
  Sighting aimed = two("B", "house A", 10, "", 0, false);
  aimed.method = SightingMethod::bearing_distance;
  aimed.bearing = pi / 2;  // east
  NotebookSetting by = setting();
  const auto p = placed({station, aimed}, by);
  EXPECT_NEAR(p[0].at->x, 20, 1e-9);
  EXPECT_NEAR(p[0].at->y, -5, 1e-9);  // to the right of the way east
  EXPECT_NEAR(p[1].at->x, 20, 1e-9);
  EXPECT_NEAR(p[1].at->y, 20, 1e-9);
  by.north = pi;  // north is to the left, so east is up
  EXPECT_NEAR(placed({aimed}, by)[0].at->y, 30, 1e-9);
}

TEST(Notebook, PointsHangOnOneAnotherInAnyOrder) {
  const auto p = placed({two("P2", "P1", 5, "lot 1", 31, true), two("P1", "lot 1", 30, "lot 2", 40, true)});
  ASSERT_TRUE(p[0].at && p[1].at);
  EXPECT_NEAR(distance(*p[0].at, *p[1].at), 5, 1e-9);
  EXPECT_NEAR(distance(*p[0].at, Point{0, 0}), 31, 1e-9);
}

TEST(Notebook, RefusalsNameThePointAndWhatIsWrong) {
  const auto p =
      placed({two("far", "lot 1", 10, "lot 2", 10, true), two("who", "lot 9", 10, "lot 2", 10, true),
              two("ring", "gnir", 10, "lot 2", 45, true), two("gnir", "ring", 10, "lot 2", 45, true),
              two("same", "lot 1", 10, "LOT 1", 10, true), two("hangs", "far", 10, "lot 1", 10, true),
              two("inside", "lot 1", 100, "lot 2", 10, true)});
  for (const PlacedSighting& s : p) ASSERT_FALSE(s.at) << s.name;
  EXPECT_NE(p[0].at.error().message().find("30"), std::string::npos) << p[0].at.error().message();
  EXPECT_NE(p[1].at.error().message().find("lot 9"), std::string::npos);
  EXPECT_EQ(p[2].at.error().code, "sighting_waits");
  EXPECT_EQ(p[3].at.error().code, "sighting_circle");
  EXPECT_EQ(p[4].at.error().code, "sighting_no_base");
  EXPECT_NE(p[5].at.error().message().find("far"), std::string::npos);
  EXPECT_EQ(p[6].at.error().code, "sighting_no_meeting");
}

TEST(Notebook, SatelliteAndGridPointsLieByTheirTies) {
  Sighting gps;
  gps.name = "G";
  gps.method = SightingMethod::latitude_longitude;
  gps.latitude = 45;
  gps.longitude = 10;
  Sighting grid;
  grid.name = "E";
  grid.method = SightingMethod::east_north;
  grid.east = 510;
  grid.north = 820;
  Survey survey;
  survey.notebook = {gps, grid};
  survey.grid = GridTie{500, 800, {1, 2}};
  const auto p = place_notebook(survey, setting());
  EXPECT_NEAR(p[0].at->x, 100, 1e-6);
  EXPECT_NEAR(p[0].at->y, 200, 1e-6);
  EXPECT_NEAR(p[1].at->x, 11, 1e-9);
  EXPECT_NEAR(p[1].at->y, 22, 1e-9);
  NotebookSetting lost = setting();
  lost.place.reset();
  EXPECT_EQ(place_notebook(survey, lost)[0].at.error().code, "sighting_no_map_place");
  survey.notebook[0].latitude = 46;
  EXPECT_EQ(place_notebook(survey, setting())[0].at.error().code, "place_too_far");
}

TEST(Notebook, NamesStayUnique) {
  std::vector<Sighting> notebook = {two("P1", "", 0, "", 0, true), two("Oak", "", 0, "", 0, true)};
  EXPECT_EQ(free_name(notebook, "oak"), "oak-2");
  EXPECT_EQ(free_name(notebook, "Elm"), "Elm");
  EXPECT_EQ(next_name(notebook), "P3");
}

TEST(Notebook, ALongChainNeitherHangsNorOverflows) {
  std::vector<Sighting> notebook;
  for (int i = 0; i < 5000; ++i) {
    Sighting s = two("C" + std::to_string(i), "C" + std::to_string(i + 1), 1, "", 0, false);
    s.method = SightingMethod::bearing_distance;
    notebook.push_back(s);
  }
  notebook.back().from = "lot 1";
  EXPECT_EQ(placed(notebook).size(), 5000u);
}
