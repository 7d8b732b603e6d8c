// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/course.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace underlawn;

namespace {

constexpr double kFt = 0.3048;

Point at(const char* text, CourseFrame frame = {.from = Point{0, 0}, .toward = Point{0, 7}}) {
  const auto place = typed_place(text, frame);
  EXPECT_TRUE(place) << text << ": " << (place ? "" : place.error().message());
  return place.value_or(Point{NAN, NAN});
}

void expect_at(const char* text, Point feet) {
  const Point p = at(text);
  EXPECT_NEAR(p.x, feet.x * kFt, 1e-9) << text;
  EXPECT_NEAR(p.y, feet.y * kFt, 1e-9) << text;
}

}  // namespace

TEST(Course, LengthAndAngle) {
  expect_at("31.5<90", {0, 31.5});
  expect_at("10 ft < 180", {-10, 0});
  expect_at("10<-90", {0, -10});
  expect_at("10<30", {10 * std::cos(M_PI / 6), 5});
  EXPECT_EQ(at("31.5<90").x, 0);
}

TEST(Course, BearingsInEveryUsualSpelling) {
  const double a = (45 + 30.0 / 60 + 15.0 / 3600) * M_PI / 180;
  const Point there{120.5 * std::sin(a), 120.5 * std::cos(a)};
  for (const char* text : {"120.5 N45°30'15\"E", "120.5 N 45-30-15 E", "120.5 ft n45 30 15e",
                           "N 45°30'15\" E 120.50 ft", "120'-6\" N45°30′15″E"})
    expect_at(text, there);
  expect_at("10 S90W", {-10, 0});
  expect_at("10 S0E", {0, -10});
  expect_at("10 W", {-10, 0});
  expect_at("30 in N90E", {2.5, 0});
  expect_at("12 inches E", {1, 0});
}

TEST(Course, BearingsCountFromNorthNotFromTheDrawing) {
  const Point p = at("10 N90E", {.from = Point{0, 0}, .toward = {}, .north = M_PI});  // north points left
  EXPECT_NEAR(p.x, 0, 1e-12);
  EXPECT_NEAR(p.y, 10 * kFt, 1e-12);
}

TEST(Course, RelativeAndAbsolutePlaces) {
  const CourseFrame frame{.from = Point{100, 200}, .toward = {}};
  EXPECT_EQ(at("@10,5", frame), (Point{100 + 10 * kFt, 200 + 5 * kFt}));
  EXPECT_EQ(at("@-10',5'-6\"", frame), (Point{100 + -10 * kFt, 200 + 5.5 * kFt}));
  EXPECT_EQ(at("#10,5", frame), (Point{10 * kFt, 5 * kFt}));
  EXPECT_EQ(at("10,5", {.from = {}, .toward = {}}), (Point{10 * kFt, 5 * kFt}));
  EXPECT_EQ(at("@1,5;2,5", {.from = Point{1, 1}, .toward = {}, .units = UnitSystem::metric}),
            (Point{2.5, 3.5}));
}

TEST(Course, BareLengthGoesTowardsThePointer) {
  expect_at("12'-6 1/2\"", {0, 12 + 6.5 / 12});
  expect_at("3 m", {0, 3 / kFt});
  EXPECT_FALSE(typed_place("10", {.from = Point{1, 1}, .toward = Point{1, 1}}));
}

TEST(Course, WhatCannotBeReadIsNamed) {
  for (const char* text :
       {"",       " ",        "<",           "10<",     "<90",    "10<abc",     "10 N95E",
        "10 N45", "N45E",     "@",           "@1",      "@1,2,3", "#,",         "1e300<0",
        "nan<0",  "10<1e309", "10 N45°75'E", "furlong", "1;2",    "\xff\xfe<3", "99999999<0"}) {
    const auto place = typed_place(text, {.from = Point{0, 0}, .toward = Point{1, 0}});
    ASSERT_FALSE(place) << text;
    EXPECT_FALSE(place.error().message().empty()) << text;
  }
}

TEST(Course, BearingTextIsReadBack) {
  for (double turn : {0.1, 0.9, 1.8, 2.9, 4.0, 5.5}) {
    const QString text = bearing_text(direction(turn), M_PI / 2);
    const Point p = at(("100 " + text).toStdString().c_str());
    EXPECT_NEAR(cross(unit(p), direction(turn)), 0, 0.5 / 3600 * M_PI / 180 * 1.01) << text.toStdString();
    EXPECT_GT(dot(p, direction(turn)), 0);
  }
  EXPECT_EQ(bearing_text({1, 1}, M_PI / 2), "N 45°00'00\" E");
}
