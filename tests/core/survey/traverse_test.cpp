// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/traverse.h"

#include <gtest/gtest.h>

#include <numbers>

#include "plane/region.h"

using namespace underlawn;

namespace {

using std::numbers::pi;

Traverse run(const std::string& text, Deed deed = {}, double north = pi / 2) {
  const DeedReading r = read_deed(text, UnitSystem::metric);
  EXPECT_TRUE(r.refusals.empty()) << (r.refusals.empty() ? "" : r.refusals[0].trouble.message());
  return run_traverse(r.courses, deed, north);
}

void expect_near(Point a, Point b, double within = 1e-9) {
  EXPECT_NEAR(a.x, b.x, within);
  EXPECT_NEAR(a.y, b.y, within);
}

const char* kOblong = "N 0 E 30 m\nN 90 E 40 m\nS 0 E 30 m\nN 90 W 40 m";

}  // namespace

TEST(Traverse, AClosedOneHasNoPrecisionAndItsAreaAndRing) {
  const Traverse t = run(kOblong);
  EXPECT_NEAR(t.area, 1200, 1e-9);
  EXPECT_NEAR(t.perimeter, 140, 1e-9);
  EXPECT_NEAR(t.misclosure, 0, 1e-9);
  EXPECT_FALSE(t.precision);
  ASSERT_EQ(t.ring.size(), 4u);
  expect_near(t.ring[2], {40, 30});
}

TEST(Traverse, NorthOfThePlanAndOfTheDeedTurnIt) {
  Deed deed;
  deed.start = {5, 6};
  const Traverse west_is_up = run(kOblong, deed, pi);  // north points to -x
  expect_near(west_is_up.ring[1], {5 - 30, 6});
  deed.turn = pi / 2;  // the deed's north is the plan's east
  expect_near(run(kOblong, deed).ring[1], {5 + 30, 6});
}

TEST(Traverse, ASmallMisclosureIsLeftToTheLastCourseOrSharedOutByTheCompassRule) {
  const std::string text = "N 0 E 30 m\nN 90 E 40 m\nS 0 E 30 m\nN 90 W 39.9 m";
  const Traverse raw = run(text);
  EXPECT_NEAR(raw.misclosure, 0.1, 1e-9);
  EXPECT_NEAR(*raw.precision, 1399, 1e-6);
  EXPECT_NEAR(raw.departure, 0.1, 1e-9);
  ASSERT_EQ(raw.ring.size(), 4u);
  Deed deed;
  deed.closure = ClosureChoice::compass_rule;
  const Traverse t = run(text, deed);
  EXPECT_NEAR(t.misclosure, 0.1, 1e-9);  // still that of the text
  double dep = 0, lat = 0;
  for (const Leg& leg : t.legs) {
    dep += leg.departure + leg.departure_correction;
    lat += leg.latitude + leg.latitude_correction;
    EXPECT_NEAR(leg.departure_correction, -0.1 * leg.course.length / 139.9, 1e-12);
  }
  EXPECT_NEAR(dep, 0, 1e-12);
  EXPECT_NEAR(lat, 0, 1e-12);
  expect_near(t.legs.back().line.back(), t.legs.front().line.front());
}

TEST(Traverse, AHalfCircleOnASquareAddsOrTakesItsSegment) {
  const double half_disc = pi * 10 * 10 / 2;
  const std::string end = "\nS 0 E 30 m\nN 90 W 20 m";
  // Clockwise: the top side of 20 m is a half circle about its middle.
  const Traverse out = run("N 0 E 30 m\ncurve right R=10 delta=180° chord N 90 E" + end);
  EXPECT_NEAR(out.area, 600 + half_disc, 1e-9);
  const Traverse in = run("N 0 E 30 m\ncurve left R=10 delta=180° chord N 90 E" + end);
  EXPECT_NEAR(in.area, 600 - half_disc, 1e-9);
  EXPECT_NEAR(out.perimeter, 80 + pi * 10, 1e-9);
  // Every chord's middle lies within the tolerance of the curve, and the ring's area follows.
  const Polyline& arc = out.legs[1].line;
  for (std::size_t i = 1; i < arc.size(); ++i) {
    EXPECT_NEAR(distance(arc[i], {10, 30}), 10, 1e-9);
    EXPECT_GT(distance(0.5 * (arc[i - 1] + arc[i]), {10, 30}), 10 - 0.01 - 1e-9);
    EXPECT_GE(arc[i].y, 30 - 1e-9);
  }
  EXPECT_LT(arc.size(), 50u);
  EXPECT_NEAR(area(out.ring), out.area, 0.01 * pi * 10);
}

TEST(Traverse, ALargerArcThanAHalfCircle) {
  const double delta = 270 * pi / 180, r = 10;
  const Traverse t = run("N 0 E 30 m\ncurve right R=10 delta=270°\nN 90 W 15 m\nS 0 E 15 m");
  const Polyline& arc = t.legs[1].line;
  for (Point p : arc) EXPECT_NEAR(distance(p, {10, 30}), r, 1e-9);
  EXPECT_NEAR(t.legs[1].course.length, r * delta, 1e-9);
  expect_near(arc.back(), {10, 20});
}

TEST(Traverse, AnOpenOneHasNoPrecisionAndIsNotCorrected) {
  Deed deed;
  deed.closure = ClosureChoice::compass_rule;
  for (const char* text : {"N 0 E 30 m", "N 0 E 30 m\nN 90 E 40 m", "N 0 E 30 m\nN 90 E 40 m\nN 0 E 30 m"}) {
    const Traverse t = run(text, deed);
    EXPECT_FALSE(t.comes_back) << text;
    EXPECT_FALSE(t.precision) << text;
    EXPECT_NEAR(t.legs[0].latitude_correction, 0, 1e-12) << text;
    EXPECT_EQ(t.ring.size(), t.legs.size() + 1) << text;
  }
  EXPECT_TRUE(run("N 0 E 30 m\nN 90 E 40 m\nS 45 W 9 m to the point of beginning").comes_back);
}

TEST(Traverse, FiguresTellWhereTheyComeFrom) {
  const DeedReading r = read_deed("N 0 E 30 m\nN 90 E 40 m\nS 0 E 30 m\nN 90 W 39.9 m", UnitSystem::metric);
  Figures all;
  add_traverse_figures(all, run_traverse(r.courses, Deed{}, 0), r);
  const double lat = all.at("survey.latitudes").value, dep = all.at("survey.departures").value;
  EXPECT_NEAR(all.at("survey.misclosure").value, std::hypot(lat, dep), 1e-12);
  EXPECT_NEAR(all.at("survey.precision").value,
              all.at("survey.run").value / all.at("survey.misclosure").value, 1e-9);
  EXPECT_FALSE(all.at("survey.misclosure").source.empty());
  EXPECT_FALSE(all.at("survey.area").source.empty());
  EXPECT_EQ(all.trace("survey.precision").back()->key, "survey.departures");
}

TEST(Traverse, BearingsAreWrittenAsDeedsWriteThem) {
  EXPECT_EQ(quadrant_bearing((45 + 30 / 60.0 + 15 / 3600.0) * pi / 180), "N 45°30'15\" E");
  EXPECT_EQ(quadrant_bearing(190.5 * pi / 180), "S 10°30'00\" W");
  EXPECT_EQ(quadrant_bearing(359.99999999 * pi / 180), "N 00°00'00\" W");
  const double read = read_deed(quadrant_bearing(2.5, 3) + " 10 m", UnitSystem::metric).courses.at(0).azimuth;
  EXPECT_NEAR(read, 2.5, 1e-8);
}
