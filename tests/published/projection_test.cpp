// SPDX-License-Identifier: GPL-3.0-or-later
// Latitude and longitude on the plan against what PROJ publishes.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "survey/earth.h"

using namespace underlawn;

// PROJ documentation, "Universal Transverse Mercator (UTM)", usage:
//   echo 12 56 | proj +proj=utm +zone=32              687071.44       6210141.33
//   echo 174 -44 | proj +proj=utm +zone=59 +south     740526.32       5123750.87
// (proj's own ellipsoid, where none is named, is GRS 80.)
TEST(Projection, UtmExamplesOfTheProjDocumentation) {
  const Point a = projected("+proj=utm +zone=32 +ellps=GRS80", 56, 12).value();
  EXPECT_NEAR(a.x, 687071.44, 0.006);
  EXPECT_NEAR(a.y, 6210141.33, 0.006);
  const Point b = projected("+proj=utm +zone=59 +south +ellps=GRS80", -44, 174).value();
  EXPECT_NEAR(b.x, 740526.32, 0.006);
  EXPECT_NEAR(b.y, 5123750.87, 0.006);
}

// PROJ, test/gie/builtins.gie, "+proj=tmerc +ellps=GRS80": accept 2 1, expect 222650.796797586
// 110642.229411933.
TEST(Projection, TransverseMercatorOfProjsOwnTests) {
  const Point p = projected("+proj=tmerc +ellps=GRS80", 1, 2).value();
  EXPECT_NEAR(p.x, 222650.796797586, 1e-4);
  EXPECT_NEAR(p.y, 110642.229411933, 1e-4);
}

// A degree of latitude and of longitude on WGS 84 at the plan's place, from the radii of curvature M and N
// (Snyder, Map Projections: a Working Manual, USGS Professional Paper 1395, equations 4-19 and 4-20).
TEST(Projection, AMetreOfThePlanIsAMetreOnTheEllipsoid) {
  const double a = 6378137, f = 1 / 298.257223563, e2 = f * (2 - f), degree = std::numbers::pi / 180;
  for (double latitude : {-40.0, 0.0, 45.0, 64.0}) {
    const double w = std::sqrt(1 - e2 * std::pow(std::sin(latitude * degree), 2));
    const double m = a * (1 - e2) / (w * w * w), n = a / w;
    const auto frame = EarthFrame::at({latitude, -93, {7, 8}}, std::numbers::pi / 2).value();
    const double step = 1e-4;  // degrees, some ten metres
    const Point north = frame.to_plan(latitude + step, -93).value();
    const Point east = frame.to_plan(latitude, -93 + step).value();
    EXPECT_NEAR(north.y - 8, m * step * degree, 1e-5);
    EXPECT_NEAR(north.x, 7, 1e-9);
    EXPECT_NEAR(east.x - 7, n * std::cos(latitude * degree) * step * degree, 1e-5);
    const auto back = frame.to_earth(east).value();
    EXPECT_NEAR(back.first, latitude, 1e-10);
    EXPECT_NEAR(back.second, -93 + step, 1e-10);
  }
}

TEST(Projection, TurnsWithThePlansNorth) {
  const auto frame = EarthFrame::at({45, 10, {0, 0}}, std::numbers::pi).value();  // north is to the left
  const Point p = frame.to_plan(45.0001, 10).value();
  EXPECT_LT(p.x, -11);
  EXPECT_NEAR(p.y, 0, 1e-6);
}
