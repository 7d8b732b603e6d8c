// SPDX-License-Identifier: GPL-3.0-or-later
// Deed calls, traverses and curves against published worked examples.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "survey/deed_calls.h"
#include "survey/survey.h"
#include "survey/traverse.h"

using namespace underlawn;

namespace {

constexpr double kFoot = 0.3048;
constexpr double kDegree = std::numbers::pi / 180;

Traverse run(const std::string& text, ClosureChoice closure = ClosureChoice::as_written) {
  const DeedReading r = read_deed(text, UnitSystem::us);
  EXPECT_TRUE(r.refusals.empty()) << (r.refusals.empty() ? "" : r.refusals[0].trouble.message());
  Deed deed;
  deed.closure = closure;
  return run_traverse(r.courses, deed, std::numbers::pi / 2);
}

double feet(double metres) {
  return metres / kFoot;
}

double dms(double d, double m, double s) {
  return (d + m / 60 + s / 3600) * kDegree;
}

}  // namespace

// "Sample Traverse Computations", scribd.com document 279716815: six courses with latitudes, departures,
// their corrections by the compass rule and the area by double meridian distances, all to four decimals.
TEST(DeedPublished, SixCourseTraverseClosedAndCorrectedByTheCompassRule) {
  const std::string lines =
      "N 5°30' E 495.85\nN 46°02' E 850.62\nS 67°38' E 855.45\nS 12°25' E 1020.87\nS 83°44' W 1117.26\n"
      "N 55°09' W 660.08";
  const Traverse t = run(lines, ClosureChoice::compass_rule);
  const double latitudes[] = {493.5672, 590.5342, -325.5265, -996.9916, -121.9557, 377.1895};
  const double departures[] = {47.5251, 612.2285, 791.0924, 219.5069, -1110.5840, -541.6952};
  const double lat_corrections[] = {-1.6677, -2.8609, -2.8772, -3.4335, -3.7577, -2.2201};
  const double dep_corrections[] = {-1.7923, -3.0747, -3.0922, -3.6901, -4.0385, -2.3860};
  ASSERT_EQ(t.legs.size(), 6u);
  for (std::size_t i = 0; i < 6; ++i) {
    EXPECT_NEAR(feet(t.legs[i].latitude), latitudes[i], 6e-5) << i;
    EXPECT_NEAR(feet(t.legs[i].departure), departures[i], 6e-5) << i;
    EXPECT_NEAR(feet(t.legs[i].latitude_correction), lat_corrections[i], 6e-5) << i;
    EXPECT_NEAR(feet(t.legs[i].departure_correction), dep_corrections[i], 6e-5) << i;
  }
  EXPECT_NEAR(feet(t.perimeter), 5000.13, 1e-6);
  EXPECT_NEAR(feet(t.latitude), 16.8171, 6e-5);
  EXPECT_NEAR(feet(t.departure), 18.0737, 6e-5);
  EXPECT_NEAR(feet(t.misclosure), 24.6876, 6e-5);
  EXPECT_NEAR(*t.precision, 200, 3);  // "1/200"
  EXPECT_NEAR(feet(feet(t.area)), 1715250.0494, 1);
}

// "Compass rule", scribd.com document 493615208: four courses; its correction of the third latitude (0.0776)
// is of another course's length and is left out.
TEST(DeedPublished, FourCourseTraverse) {
  const Traverse t = run("N 76°00' E 80.40\nS 36°00' E 46.30\nS 61°00' W 72.80\nN 38°00' W 68.00",
                         ClosureChoice::compass_rule);
  const double latitudes[] = {19.451, -37.457, -35.294, 53.585};
  const double departures[] = {78.012, 27.214, -63.672};
  for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(feet(t.legs[i].latitude), latitudes[i], 6e-4);
  for (std::size_t i = 0; i < 3; ++i) EXPECT_NEAR(feet(t.legs[i].departure), departures[i], 6e-4);
  // Its sums are of numbers rounded to thousandths, and its corrections follow from the sums.
  EXPECT_NEAR(feet(t.latitude), 0.285, 2e-3);
  EXPECT_NEAR(feet(t.departure), -0.311, 2e-3);
  EXPECT_NEAR(feet(t.legs[0].latitude_correction), -0.0857, 6e-4);
  EXPECT_NEAR(feet(t.legs[0].departure_correction), 0.0935, 6e-4);
  EXPECT_NEAR(feet(t.legs[3].latitude_correction), -0.0724, 6e-4);
  EXPECT_NEAR(feet(t.legs[3].departure_correction), 0.0791, 6e-4);
}

// Five courses by azimuth: sums of latitudes -0.007 and departures +0.301 in 1044.079 (a stored problem on
// the compass rule; its printed departure of the third course has the wrong sign, for azimuth 196-59 leads
// west; its second azimuth is printed as 227-09-60).
TEST(DeedPublished, FiveAzimuthsSumToAKnownMisclosure) {
  const Traverse t =
      run("AZ 306-31-00 371.006\nAZ 227-10-00 110.222\nAZ 196-59-00 139.872\nAZ 102-58-00 103.119\nAZ "
          "88-01-00 319.860");
  EXPECT_NEAR(feet(t.run), 1044.079, 1e-6);
  EXPECT_NEAR(feet(t.latitude), -0.007, 2e-3);
  EXPECT_NEAR(feet(t.departure), 0.301, 2e-3);
  EXPECT_NEAR(feet(t.legs[2].departure), -40.856, 1e-3);
}

// Traverse table of NAVEDTRA 14070: 725.00 ft at N 15°30' E has the latitude 698.59 by its table of whole
// feet and tenths; exactly 698.633 of 725.00 ft and 698.940 of 725.32 ft, departure 193.833.
TEST(DeedPublished, LatitudeAndDepartureOfOneCourse) {
  const Traverse t = run("N 15°30' E 725.32");
  EXPECT_NEAR(feet(t.legs[0].latitude), 698.940, 6e-4);
  EXPECT_NEAR(feet(t.legs[0].departure), 193.833, 6e-4);
}

// J. Mahun, Open Access Surveying Library, COGO chapter H: the five stations C, D, E, A, B by coordinates,
// here as courses between them; area 140 494 ft2 by its sums of products, 140 493.107 exactly.
TEST(DeedPublished, AreaByCoordinatesOfAFiveStationTraverse) {
  const double north[] = {406.31, 235.12, 65.81, 317.89, 675.32};
  const double east[] = {1259.97, 1489.47, 1126.40, 942.04, 1282.54};
  std::string text;
  for (int i = 0; i < 5; ++i) {
    const double dn = north[(i + 1) % 5] - north[i], de = east[(i + 1) % 5] - east[i];
    text += quadrant_bearing(std::atan2(de, dn), 3) + " " + std::to_string(std::hypot(dn, de)) + " ft\n";
  }
  const Traverse t = run(text);
  EXPECT_NEAR(feet(feet(t.area)), 140493.107, 0.1);
  EXPECT_LT(feet(t.misclosure), 1e-4);
}

// A curve as Oregon plats state it, rpls.com forum "Defining curves in tract descriptions": 856.76 feet on
// the arc of a 429.99 foot radius curve through 114°09'46", chord N 33°02'08" E 721.90 feet, ending in N
// 24°02'45" W. (The forum's text runs up to it on N 89°52'59" W; a left curve with that chord begins in S
// 89°52'59" E.)
TEST(DeedPublished, ElementsOfALongCurve) {
  const DeedReading r = read_deed(
      "thence S 89°52'59\" E 10.00 feet to the point of curve of a 429.99 foot radius curve to the left; "
      "thence 856.76 "
      "feet on the arc of said curve through a central angle of 114°09'46\" (the chord of said curve bears "
      "N33°02'08\"E, 721.90 feet) to a point of tangency; thence N24°02'45\"W, 20.00 feet",
      UnitSystem::us);
  ASSERT_TRUE(r.refusals.empty()) << r.refusals[0].trouble.message();
  ASSERT_EQ(r.courses.size(), 3u);
  ASSERT_TRUE(r.courses[1].curve);
  const Curve& c = *r.courses[1].curve;
  EXPECT_NEAR(feet(c.arc), 856.76, 0.005);
  EXPECT_NEAR(feet(c.chord), 721.90, 0.005);
  EXPECT_NEAR(c.azimuth_in, dms(90, 7, 1), 2 * kDegree / 3600);
  EXPECT_NEAR(c.azimuth_out, dms(335, 57, 15), 2 * kDegree / 3600);
}

// community.esri.com, "COGO: Finding Chord, Tangent, or Radial Direction": an easement's description with
// three curves, each described at the end of the call before; arcs 447.83, 439.08 and 103.14 ft follow from
// radius and central angle.
TEST(DeedPublished, CurvesDescribedAheadOfTheirCalls) {
  const DeedReading r = read_deed(
      "Thence North 82-45'-23\" East, 430.99 feet to the PC of curve to the right, having a central angle of "
      "43-11'-09\", a radius of 594.15 feet;\nThence along said curve an arc distance of 447.83 feet, to the "
      "PC of a "
      "curve to the right having a central angle of 48-20'-50\", a radius of 520.34 feet;\nThence along said "
      "curve an "
      "arc distance of 439.08 feet to the PC of a curve to the left having a central angle of 08-47'-22\", a "
      "radius of "
      "672.36 feet;\nThence along said curve an arc distance of 103.14 feet;\nThence south 49-39'-42\" West "
      "non-tangentially to the last mentioned curve, 1853.50 feet;",
      UnitSystem::us);
  ASSERT_TRUE(r.refusals.empty()) << r.refusals[0].trouble.message();
  ASSERT_EQ(r.courses.size(), 5u);
  const double radii[] = {594.15, 520.34, 672.36}, arcs[] = {447.83, 439.08, 103.14};
  const bool left[] = {false, false, true};
  for (std::size_t i = 0; i < 3; ++i) {
    ASSERT_TRUE(r.courses[i + 1].curve);
    const Curve& c = *r.courses[i + 1].curve;
    EXPECT_NEAR(feet(c.radius), radii[i], 1e-6);
    EXPECT_NEAR(feet(c.radius * c.delta), arcs[i], 0.01);
    EXPECT_EQ(c.left, left[i]);
  }
  EXPECT_NEAR(r.courses[1].curve->azimuth_out, dms(82, 45, 23) + dms(43, 11, 9), 1e-9);
  EXPECT_FALSE(r.courses[4].curve);
  EXPECT_NEAR(feet(r.courses[4].length), 1853.50, 1e-6);
}

// The same forum, thread 191227: tangent N 19-29-58 W, central angle 11-1-51 to the right: chord N 13-59-03
// W.
TEST(DeedPublished, ChordBearingFromTheTangent) {
  const DeedReading r = read_deed("N 19-29-58 W 100\ncurve right delta 11-01-51 R=300", UnitSystem::us);
  ASSERT_TRUE(r.refusals.empty()) << r.refusals[0].trouble.message();
  EXPECT_NEAR(r.courses.at(1).azimuth, 2 * std::numbers::pi - dms(13, 59, 3), 1 * kDegree / 3600);
}

// "Surveying Mathematics Made Simple", simple curve examples: R 1800.00, delta 43°25'46" right, tangents
// N14°26'17"E and N57°52'03"E, L 1364.38, C 1331.94325: any two of them give the rest. Its arc is 0.008 ft
// off its own radius and central angle, and arc and chord alone fix a radius no better than 0.3 ft.
TEST(DeedPublished, AnyTwoElementsGiveTheCurve) {
  for (const char* given :
       {"R=1800.00 delta=43°25'46\"", "R=1800.00 chord=1331.94325", "delta=43°25'46\" L=1364.38",
        "delta=43°25'46\" chord=1331.94325", "L=1364.38 chord=1331.94325"}) {
    const DeedReading r = read_deed(std::string("N14°26'17\"E 100 ft\ncurve right ") + given, UnitSystem::us);
    ASSERT_TRUE(r.refusals.empty()) << given << ": " << r.refusals[0].trouble.message();
    ASSERT_TRUE(r.courses.at(1).curve);
    const Curve& c = *r.courses[1].curve;
    EXPECT_NEAR(feet(c.arc), 1364.38, 0.01) << given;
    EXPECT_NEAR(feet(c.chord), 1331.94325, 0.01) << given;
    EXPECT_NEAR(c.azimuth_out, dms(57, 52, 3), 25 * kDegree / 3600) << given;
    EXPECT_NEAR(feet(c.radius), 1800, 0.3) << given;
  }
}
