// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/field_points.h"

#include <gtest/gtest.h>

#include <random>

using namespace underlawn;

TEST(PointsCsv, NamedColumnsInAnyOrderAndSpelling) {
  const auto r = points_from_csv(
      "Longitude,Point Name,Latitude (deg),Elev_ft,Description\n"
      "-122.5,Oak,45.25,100,\"big, old\"\n"
      "122°30'00\"W,Well,\"45°15'00\"\" N\",,\n",
      UnitSystem::us);
  ASSERT_TRUE(r) << r.error().message();
  ASSERT_EQ(r->value.size(), 2u);
  EXPECT_EQ(r->value[0].name, "Oak");
  EXPECT_DOUBLE_EQ(r->value[0].latitude, 45.25);
  EXPECT_DOUBLE_EQ(r->value[0].longitude, -122.5);
  EXPECT_NEAR(*r->value[0].height, 30.48, 1e-12);
  EXPECT_EQ(r->value[0].note, "big, old");
  EXPECT_DOUBLE_EQ(r->value[1].latitude, 45.25);
  EXPECT_DOUBLE_EQ(r->value[1].longitude, -122.5);
  EXPECT_FALSE(r->value[1].height);
}

TEST(PointsCsv, EastAndNorthInTheirUnit) {
  const auto feet = points_from_csv("P,N (ft),E (ft)\n1,200,100\n", UnitSystem::metric);
  ASSERT_TRUE(feet) << feet.error().message();
  EXPECT_NEAR(feet->value[0].east, 30.48, 1e-12);
  EXPECT_NEAR(feet->value[0].north, 60.96, 1e-12);
  EXPECT_TRUE(feet->remarks.empty());
  const auto survey = points_from_csv("name,east_usft,north_usft\na,3937,0\n", UnitSystem::us);
  EXPECT_NEAR(survey->value[0].east, 1200, 1e-9);
  const auto bare = points_from_csv("name;easting;northing\na;100,5;200\n", UnitSystem::metric);
  EXPECT_NEAR(bare->value[0].east, 100.5, 1e-12);
  EXPECT_EQ(bare->remarks.size(), 1u);
}

TEST(PointsCsv, RowsThatCannotBeReadAreLeftOutByLine) {
  const auto r = points_from_csv("name,lat,lon\na,91,0\nb,45,x\nc,45,10\nd,1e300,0\n", UnitSystem::us);
  ASSERT_TRUE(r);
  ASSERT_EQ(r->value.size(), 1u);
  ASSERT_EQ(r->remarks.size(), 3u);
  EXPECT_NE(r->remarks[1].message().find("line 3"), std::string::npos);
  EXPECT_FALSE(points_from_csv("name,height\na,1\n", UnitSystem::us));
  EXPECT_FALSE(points_from_csv("", UnitSystem::us));
  EXPECT_FALSE(points_from_csv("name,lat,lon\na,b,c\n", UnitSystem::us));
  EXPECT_FALSE(points_from_csv(std::string("name,lat,lon\na,1,\0", 18), UnitSystem::us));
}

namespace {

const char* kGpx = R"(<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="hand" xmlns="http://www.topografix.com/GPX/1/1">
  <wpt lat="45.25" lon="-122.5"><ele>30.5</ele><name>Oak &amp; well</name><desc>by the drive</desc></wpt>
  <wpt lat="95" lon="0"><name>nowhere</name></wpt>
  <trk><name>Fence</name><trkseg><trkpt lat="45.1" lon="-122.1"/><trkpt lat="45.2" lon="-122.2"/></trkseg></trk>
  <rte><rtept lat="45.3" lon="-122.3"/></rte>
</gpx>)";

}  // namespace

TEST(PointsGpx, WaypointsTracksAndRoutes) {
  const auto r = points_from_gpx(kGpx);
  ASSERT_TRUE(r) << r.error().message();
  ASSERT_EQ(r->value.size(), 4u);
  EXPECT_EQ(r->value[0].name, "Oak & well");
  EXPECT_EQ(r->value[0].note, "by the drive");
  EXPECT_DOUBLE_EQ(*r->value[0].height, 30.5);
  EXPECT_EQ(r->value[2].name, "Fence 2");
  EXPECT_DOUBLE_EQ(r->value[2].longitude, -122.2);
  EXPECT_EQ(r->remarks.size(), 1u);
}

TEST(PointsGpx, WhatIsNoGpxIsRefused) {
  const std::string deep = [] {
    std::string text = "<gpx>";
    for (int i = 0; i < 100000; ++i) text += "<a>";
    return text;
  }();
  for (const std::string& text :
       {std::string(), std::string("<gpx>"), std::string("<kml></kml>"), std::string("<gpx></gpx>"),
        std::string("\0\0\0", 3), deep, std::string("<!DOCTYPE x [<!ENTITY a \"aaaa\">]><gpx>&a;</gpx>")})
    EXPECT_FALSE(points_from_gpx(text));
}

TEST(FieldPoints, SpoiledFilesAreReadOrRefusedWithoutHarm) {
  std::mt19937 random(7);
  const std::string csv = "name,lat,lon,ele\nOak,45.25,-122.5,3\nWell,45 15 00 N,122 30 W,\n";
  for (int n = 0; n < 10000; ++n)
    for (const std::string& good : {csv, std::string(kGpx)}) {
      std::string text = good;
      for (int k = 0; k < 1 + n % 4; ++k) {
        const std::size_t at = random() % text.size();
        if (random() % 2)
          text[at] = static_cast<char>(random() % 256);
        else
          text.erase(at, random() % 9);
      }
      const auto read = good == csv ? points_from_csv(text, UnitSystem::us) : points_from_gpx(text);
      if (!read) continue;
      for (const Sighting& s : read->value) EXPECT_LE(std::abs(s.latitude), 90);
    }
}
