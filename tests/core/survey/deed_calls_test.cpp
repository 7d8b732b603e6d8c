// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/deed_calls.h"

#include <gtest/gtest.h>

#include <cmath>
#include <ctime>
#include <numbers>
#include <random>

#include "survey/deed_words.h"
#include "survey/survey.h"
#include "survey/traverse.h"

using namespace underlawn;

namespace {

constexpr double kFoot = 0.3048;
constexpr double kDegree = std::numbers::pi / 180;

double dms(double d, double m, double s) {
  return (d + m / 60 + s / 3600) * kDegree;
}

DeedReading us(const std::string& text) {
  return read_deed(text, UnitSystem::us);
}

Course only(const std::string& text, UnitSystem units = UnitSystem::us) {
  const DeedReading r = read_deed(text, units);
  EXPECT_TRUE(r.refusals.empty()) << text << ": "
                                  << (r.refusals.empty() ? "" : r.refusals[0].trouble.message());
  EXPECT_EQ(r.courses.size(), 1u) << text;
  return r.courses.empty() ? Course{} : r.courses[0];
}

std::string refusal(const std::string& text, UnitSystem units = UnitSystem::us) {
  const DeedReading r = read_deed(text, units);
  EXPECT_FALSE(r.refusals.empty()) << text;
  return r.refusals.empty() ? "" : r.refusals[0].trouble.message();
}

void expect_course(const std::string& text, double azimuth, double metres) {
  const Course c = only(text);
  EXPECT_NEAR(c.azimuth, azimuth, 1e-9) << text;
  EXPECT_NEAR(c.length, metres, 1e-9) << text;
}

}  // namespace

TEST(DeedCalls, OneBearingInManySpellings) {
  const double way = dms(45, 30, 15), m = 120.50 * kFoot;
  for (const char* text : {"N 45°30'15\" E 120.50 ft",
                           "N45°30'15\"E 120.50'",
                           "N 45° 30' 15\" E, 120.50 feet",
                           "N45-30-15E 120.50",
                           "n 45 30 15 e 120.50",
                           "North 45 degrees 30 minutes 15 seconds East 120.50 feet",
                           "North 45 deg. 30 min. 15 sec. East a distance of 120.50 feet",
                           "N.45°30'15\"E. 120.50 ft.",
                           "N45d30m15sE 120.5ft",
                           "N 45:30:15 E 120.50",
                           "N 45º30′15″ E – 120.50 feet",
                           "N45^30'15\"E: 120.50'",
                           "N 45° 30’ 15” E  120.50’",
                           "Thence N 45°30'15\" E 120.50 feet to a 5/8 inch rebar;",
                           "1. N 45°30'15\" E 120.50 ft",
                           "(1) N 45°30'15\" E 120.50 ft",
                           "L1  N45°30'15\"E  120.50'",
                           "Course 1: N 45°30'15\" E 120.50 ft",
                           "L1 | N45°30'15\"E | 120.50",
                           "\"N 45°30'15\"\" E\",120.50",
                           "1 N45°30'15\"E 120.50",
                           "North 45 degrees, 30 minutes and 15 seconds East, along the line of Lot 7, a "
                           "distance of 120.50 feet",
                           "AZ 45°30'15\" 120.50 ft",
                           "azimuth 45-30-15, 120.50",
                           "45°30'15\" 120.50 ft",
                           "Az. = 45°30'15\" 120.50'",
                           "120.50 feet N 45°30'15\" E",
                           "45°30'15\" 120.5",
                           "N45°30'15\"E120.50'",
                           "N 45°30'15\" E 120.50 ft # to the oak"})
    expect_course(text, way, m);
}

TEST(DeedCalls, QuadrantsDecimalsAndDueCourses) {
  expect_course("S 10°30' E 100 ft", 169.5 * kDegree, 100 * kFoot);
  expect_course("S 10.5 W 100 ft", 190.5 * kDegree, 100 * kFoot);
  expect_course("N 10.5° W 100 ft", 349.5 * kDegree, 100 * kFoot);
  expect_course("N 0° E 100", 0, 100 * kFoot);
  expect_course("N 90 W 100 ft", 270 * kDegree, 100 * kFoot);
  expect_course("Due South 100 feet", 180 * kDegree, 100 * kFoot);
  expect_course("thence West 100 feet to a pin", 270 * kDegree, 100 * kFoot);
  expect_course("E 100 ft", 90 * kDegree, 100 * kFoot);
  expect_course("South 100'", 180 * kDegree, 100 * kFoot);
  expect_course("AZ 271.25 100 ft", 271.25 * kDegree, 100 * kFoot);
  expect_course("N 12°15.5' E 100 ft", dms(12, 15.5, 0), 100 * kFoot);
}

TEST(DeedCalls, ABearingThatLostItsDegreeSignIsRefusedNotReadAsADueCourse) {
  EXPECT_NE(refusal("S 7930' E 100").find("E 100"), std::string::npos);
  EXPECT_TRUE(us("S 79.5'\nE 100'").refusals.empty());
}

TEST(DeedCalls, AnyUnitOfLength) {
  const double way = 45 * kDegree;
  const std::pair<const char*, double> lengths[] = {{"10 chains", 660 * kFoot},
                                                    {"10 chains 25 links", 676.5 * kFoot},
                                                    {"10.25 ch", 676.5 * kFoot},
                                                    {"4 rods", 66 * kFoot},
                                                    {"4 rods and 5 links", 69.3 * kFoot},
                                                    {"4 poles", 66 * kFoot},
                                                    {"4 perches", 66 * kFoot},
                                                    {"36.73 m", 36.73},
                                                    {"36.73 metres", 36.73},
                                                    {"12'-6\"", 12.5 * kFoot},
                                                    {"12' 6 1/2\"", 150.5 * 0.0254},
                                                    {"12 ft 6 in", 12.5 * kFoot},
                                                    {"1,234.56 feet", 1234.56 * kFoot},
                                                    {"36,73 m", 36.73},
                                                    {"0.25 mile", 1320 * kFoot},
                                                    {"10 varas", 1000.0 / 3 * 0.0254},
                                                    {"100 US survey feet", 100 * 1200.0 / 3937},
                                                    {"40 yards", 120 * kFoot},
                                                    {"100 U.S. survey feet", 100 * 1200.0 / 3937}};
  for (const auto& [text, metres] : lengths) expect_course(std::string("N 45° E ") + text, way, metres);
  EXPECT_DOUBLE_EQ(only("N 45 E 100", UnitSystem::metric).length, 100);
  const DeedReading r = us("units: chains\nN 45 E 10\nS 45 E 20");
  ASSERT_EQ(r.courses.size(), 2u);
  EXPECT_NEAR(r.courses[1].length, 1320 * kFoot, 1e-9);
}

TEST(DeedCalls, ProseIsCutIntoItsCallsAndClosesInWords) {
  const DeedReading r =
      us("BEGINNING at an iron pin at the southwest corner of Lot 7, which bears N 12° E 30.00 feet from the "
         "road;\n"
         "thence along the west line of said lot North 10° 00' 00\" East, a distance of\n"
         "200.00 feet to a 5/8 inch rebar; thence South 80 degrees\n00 minutes East 150.00 feet to a stone;\n"
         "THENCE S 10° W 200.00 feet; thence N 80° W 150.00 feet to the POINT OF BEGINNING, containing "
         "0.6887 acre, "
         "more or less, subject to an easement 10 feet wide.");
  EXPECT_TRUE(r.refusals.empty());
  ASSERT_EQ(r.courses.size(), 4u);
  EXPECT_NEAR(r.courses[0].azimuth, 10 * kDegree, 1e-12);
  EXPECT_NEAR(r.courses[1].azimuth, 100 * kDegree, 1e-12);
  EXPECT_EQ(r.courses[1].line, 3);
  EXPECT_TRUE(r.courses[3].to_beginning);
  ASSERT_TRUE(r.stated_area);
  EXPECT_NEAR(*r.stated_area, 0.6887 * 43560 * kFoot * kFoot, 1e-6);
  std::string passed;
  for (const DeedNote& n : r.passed) passed += n.trouble.message() + "\n";
  EXPECT_NE(passed.find("5/8"), std::string::npos) << passed;
  EXPECT_NE(passed.find("Lot 7"), std::string::npos) << passed;
}

TEST(DeedCalls, AListOfCoursesBehindOneThence) {
  const DeedReading r =
      us("thence along said line the following three (3) courses:\n1) N 10° E 100.00 feet;\n2) N 20° E 50.00 "
         "feet;\n"
         "3) N 30° E 25.00 feet; thence S 80° E 90 feet");
  EXPECT_TRUE(r.refusals.empty()) << r.refusals[0].trouble.message();
  ASSERT_EQ(r.courses.size(), 4u);
  EXPECT_NEAR(r.courses[2].length, 25 * kFoot, 1e-12);
}

TEST(DeedCalls, TiesFromThePointOfCommencementAreNotOfTheBoundary) {
  const DeedReading r =
      us("COMMENCING at the corner of Section 7; thence N 0° E 500.00 feet to the TRUE POINT OF BEGINNING; "
         "thence N 0° E "
         "100 feet; thence N 90° E 100 feet; thence S 0° E 100 feet; thence to the point of beginning.");
  EXPECT_TRUE(r.refusals.empty());
  ASSERT_EQ(r.courses.size(), 5u);
  EXPECT_TRUE(r.courses[0].tie);
  EXPECT_FALSE(r.courses[1].tie);
  EXPECT_TRUE(r.courses[4].worked_out);
  const Traverse t = run_traverse(r.courses, Deed{}, std::numbers::pi / 2);
  EXPECT_EQ(t.ties, 1u);
  EXPECT_NEAR(t.area, 10000 * kFoot * kFoot, 1e-6);
  EXPECT_NEAR(t.begin.y, 500 * kFoot, 1e-9);
  EXPECT_TRUE(t.worked_out);
  ASSERT_EQ(t.ring.size(), 4u);
}

TEST(DeedCalls, CurvesByWhatTheDeedGives) {
  const double r = 50 * kFoot, delta = 90 * kDegree, arc = r * delta, chord = 2 * r * std::sin(delta / 2);
  for (const char* text :
       {"N 0 E 100 ft\ncurve right R=50 L=78.54", "N 0 E 100 ft\ncurve right R=50' delta=90°",
        "N 0 E 100 ft\ncurve to the right, radius 50 ft, central angle of 90°00'00\"",
        "N 0 E 100 ft\nC1 R=50.00' L=78.54' Δ=90°00'00\" CB=N45°00'00\"E CH=70.71' right",
        "N 0 E 100 ft\ncurve right, chord N 45° E 70.71 ft, R = 50 ft",
        "N 0 E 100 ft\narc 78.54 ft chord 70.71 ft to the right",
        "thence N 0° E 100 feet; thence along the arc of a tangent curve to the right having a radius of "
        "50.00 feet, "
        "an arc distance of 78.54 feet, through a central angle of 90°, the chord of which bears N 45° E "
        "70.71 feet",
        "thence N 0° E 100 feet to the beginning of a curve to the right having a radius of 50.00 feet and a "
        "central "
        "angle of 90°; thence along said curve an arc distance of 78.54 feet",
        "thence N 0° E 100 feet; thence 78.54 feet on the arc of a 50.00 foot radius curve to the right",
        "N 0 E 100 ft\ncurve to the right whose centre bears N 90° E 50 feet, central angle 90°",
        "thence N 0° E 100 feet; thence on a curve concave to the southeast, with a radius of 50 feet, a "
        "distance of "
        "78.54 feet"}) {
    const DeedReading read = us(text);
    ASSERT_TRUE(read.refusals.empty()) << text << ": " << read.refusals[0].trouble.message();
    ASSERT_EQ(read.courses.size(), 2u) << text;
    ASSERT_TRUE(read.courses[1].curve) << text;
    const Curve& c = *read.courses[1].curve;
    EXPECT_NEAR(c.radius, r, 0.01) << text;
    EXPECT_NEAR(c.delta, delta, 1e-3) << text;
    EXPECT_NEAR(c.arc, arc, 0.01) << text;
    EXPECT_NEAR(c.chord, chord, 0.01) << text;
    EXPECT_NEAR(c.chord_azimuth, 45 * kDegree, 1e-3) << text;
    EXPECT_NEAR(c.azimuth_out, 90 * kDegree, 2e-3) << text;
    EXPECT_FALSE(c.left) << text;
  }
}

// 5729.578 / 5 ft: the arc definition.
TEST(DeedCalls, ACurveByItsDegree) {
  const DeedReading r = us("N 0 E 100\ncurve right, degree of curve 5°00', length 200");
  ASSERT_EQ(r.courses.size(), 2u);
  EXPECT_NEAR(r.courses[1].curve->radius, 5729.578 / 5 * kFoot, 1e-4);
  EXPECT_NEAR(r.courses[1].curve->delta, 10 * kDegree, 1e-9);
}

TEST(DeedCalls, EveryNumberThatIsReadPastIsTold) {
  const DeedReading r =
      us("thence N 45° E 100 feet to a point on the line of Lot 7, which is 20 feet east of the road");
  ASSERT_EQ(r.passed.size(), 1u);
  const std::string told = r.passed[0].trouble.message();
  EXPECT_NE(told.find("Lot 7"), std::string::npos) << told;
  EXPECT_NE(told.find("20 feet"), std::string::npos) << told;
}

TEST(DeedCalls, CurvesThatAreNotGivenInFullOrDisagreeAreRefused) {
  EXPECT_NE(refusal("N 0 E 100 ft\ncurve R=50 L=78.54").find("left or to the right"), std::string::npos);
  EXPECT_NE(refusal("N 0 E 100 ft\ncurve left R=50").find("two of radius"), std::string::npos);
  EXPECT_NE(refusal("curve left R=50 L=78.54").find("chord's bearing"), std::string::npos);
  EXPECT_NE(refusal("N 0 E 100 ft\nnon-tangent curve left R=50 L=78.54").find("not to be tangent"),
            std::string::npos);
  EXPECT_NE(refusal("N 0 E 100 ft\ncurve left R=50 L=90 delta=90°").find("arc"), std::string::npos);
  EXPECT_NE(refusal("N 0 E 100 ft\ncurve left R=50 chord N 45 E 101 ft").find("diameter"), std::string::npos);
  EXPECT_NE(refusal("N 0 E 100 ft\ncurve left R=50 L=78.54 N 45 E").find("chord or"), std::string::npos);
}

TEST(DeedCalls, RefusalsNameLineWordsAndWhatWasExpected) {
  const std::string no_distance = refusal("N 10 E 100 ft\nS 45 E");
  EXPECT_NE(no_distance.find("Line 2"), std::string::npos) << no_distance;
  EXPECT_NE(no_distance.find("S 45 E"), std::string::npos) << no_distance;
  EXPECT_NE(no_distance.find("Expected a distance"), std::string::npos) << no_distance;
  EXPECT_NE(refusal("N 95° E 100 ft").find("0° to 90°"), std::string::npos);
  EXPECT_NE(refusal("N 45°75' E 100 ft").find("minutes"), std::string::npos);
  EXPECT_NE(refusal("N 45°30'75\" E 100 ft").find("seconds"), std::string::npos);
  EXPECT_NE(refusal("Northeasterly 100 feet").find("bearing"), std::string::npos);
  EXPECT_NE(refusal("135.5 100").find("bearing"), std::string::npos);
  EXPECT_NE(refusal("N 45 E 1,234 feet").find("thousands"), std::string::npos);
  EXPECT_NE(refusal("45° 30 120.5").find("two numbers"), std::string::npos);
  EXPECT_NE(refusal("N 10 E 200 ft S 80 E 150 ft").find("line of its own"), std::string::npos);
  EXPECT_NE(refusal("N 45 E 0 ft").find("more than 0"), std::string::npos);
  EXPECT_NE(refusal("N 45 E 120.50 feet (40.00 m)").find("brackets"), std::string::npos);
  EXPECT_TRUE(us("N 45 E 120.50 feet (36.73 m)").refusals.empty());
}

TEST(DeedCalls, CoursesStopAtTheFirstRefusalAndAllRefusalsAreTold) {
  const DeedReading r = us("N 10 E 100 ft\nS 95 E 20 ft\nS 10 E 20 ft\nhello 5");
  EXPECT_EQ(r.courses.size(), 1u);
  ASSERT_EQ(r.refusals.size(), 2u);
  EXPECT_EQ(r.refusals[0].line, 2);
  EXPECT_EQ(r.refusals[1].line, 4);
}

TEST(DeedCalls, NothingAndRemarksAreNoCalls) {
  for (const char* text : {"", "\n\n", "# N 45 E 100 ft", "// from book 12\n", "Lot line of the Miller place",
                           "Lot 7, Block 3 of Sunny Acres, Plat Book 12"}) {
    const DeedReading r = us(text);
    EXPECT_TRUE(r.courses.empty()) << text;
    EXPECT_TRUE(r.refusals.empty()) << text;
  }
}

TEST(DeedCalls, WhatOnlyLooksLikeAPreambleIsACall) {
  expect_course("From the point of beginning N 45 E 100 feet", 45 * kDegree, 100 * kFoot);
  EXPECT_TRUE(only("N 45 E 100 feet to the beginning.").to_beginning);
  EXPECT_FALSE(only("N 45 E 100 feet to the beginning of a curve").to_beginning);
  EXPECT_EQ(us("M 45 E 100").refusals.size(), 1u);
}

TEST(DeedCalls, ABearingByItself) {
  EXPECT_NEAR(*deed::bearing_in("N 45°30'15\" E"), dms(45, 30, 15), 1e-12);
  EXPECT_NEAR(*deed::bearing_in("s10w"), 190 * kDegree, 1e-12);
  EXPECT_NEAR(*deed::bearing_in("due West"), 270 * kDegree, 1e-12);
  EXPECT_NEAR(*deed::bearing_in("135.5"), 135.5 * kDegree, 1e-12);
  EXPECT_NEAR(*deed::bearing_in("AZ 135-30-00"), 135.5 * kDegree, 1e-12);
  for (const char* text : {"", "N 95 E", "400", "N 45 E 100", "up"})
    EXPECT_FALSE(deed::bearing_in(text)) << text;
}

TEST(DeedCalls, HostileTextIsReadInBoundsAndNeverFails) {
  std::vector<std::string> texts = {std::string(kMostDeedText + 1, 'N'),
                                    std::string(kMostDeedText, ';'),
                                    std::string(kMostDeedText, '1'),
                                    std::string(kMostDeedText, '\xff'),
                                    "N 1e300 E 1e300 ft",
                                    "N \0 E",
                                    "\xef\xbb\xbfN 45 E 100 ft"};
  std::string many, thence, words;
  for (int i = 0; i < 9000; ++i) many += "N 1 E 1 ft\n";
  for (int i = 0; i < 12000; ++i) thence += "thence ";
  for (int i = 0; i < 20000; ++i) words += "arc ";
  texts.insert(texts.end(), {many, thence, words});
  for (const std::string& text : texts) {
    const DeedReading r = us(text);
    EXPECT_LE(r.courses.size(), kMostCourses);
    for (const Course& c : r.courses) EXPECT_TRUE(std::isfinite(c.length) && std::isfinite(c.azimuth));
  }
  EXPECT_EQ(us("\xef\xbb\xbfN 45 E 100 ft").courses.size(), 1u);
  EXPECT_FALSE(us(texts[0]).refusals.empty());
}

// A call of thousands of lines and thousands of signs between two numbers. Each is read in hundredths of a
// second; a reader that goes back at every line takes 10 s and more.
TEST(DeedCalls, LongCallsTakeTimeByTheirLength) {
  const auto repeated = [](std::string begin, const char* piece, int times) {
    for (int i = 0; i < times; ++i) begin += piece;
    return begin;
  };
  for (const std::string& text :
       {repeated("n 45 e\n", "a\n", 45000), repeated("n 45 e distance\n", "dist\n", 18000),
        repeated(repeated("n 45 e", ",", 50000), " 1", 20000), repeated("thence ", "1;", 45000),
        repeated("n 1 e 5 ft\n", ",\n", 45000), repeated("n", ".", 90000), repeated("1 ", "and ", 24000)}) {
    const std::clock_t from = std::clock();
    us(text);
    EXPECT_LT(static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC, 1) << text.substr(0, 20);
  }
}

TEST(DeedCalls, SpoiledTextsAreReadTheSameTwiceAndFinite) {
  const std::string good =
      "Beginning at a pin; thence N 45°30'15\" E 120.50 feet; thence along a curve to the left, R=50 ft, "
      "L=30.20 ft, "
      "chord N 28° E 29.7 ft; thence S 10-20-30 W 10 chains 25 links to the point of beginning";
  std::mt19937 random(20261126);
  for (int n = 0; n < 10000; ++n) {
    std::string text = good;
    for (int k = 0; k < 1 + n % 4; ++k) {
      const std::size_t at = random() % text.size();
      if (random() % 2)
        text[at] = static_cast<char>(random() % 256);
      else
        text.erase(at, random() % 9);
    }
    const DeedReading r = us(text);
    EXPECT_EQ(r, us(text));
    const Traverse t = run_traverse(r.courses, Deed{}, 1.0);
    EXPECT_TRUE(std::isfinite(t.area) && std::isfinite(t.misclosure)) << text;
  }
}
