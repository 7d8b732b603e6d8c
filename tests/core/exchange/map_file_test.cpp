// SPDX-License-Identifier: GPL-3.0-or-later
// GeoJSON, KML, Shapefile and GeoPackage onto the lot, and the plan out again.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "exchange/bring_in.h"
#include "exchange/drawing_json.h"
#include "exchange/export_plan.h"
#include "exchange/map_plane.h"
#include "plan/solve.h"
#include "plane/region.h"
#include "support/drawing_files.h"
#include "support/sample_plans.h"

namespace underlawn {

namespace {

Drawing read(const DrawingFile& file) {
  auto drawing = read_drawing(file);
  EXPECT_TRUE(drawing.has_value()) << (drawing ? "" : drawing.error().message());
  return drawing ? *drawing : Drawing();
}

std::vector<ShapeGroup> usual(const Drawing& d) {
  std::vector<int> by;
  for (std::size_t i = 0; i < d.layers.size(); ++i) by.push_back(likely_attribute(d, static_cast<int>(i)));
  return groups_of(d, by);
}

Brought brought(const Drawing& d, const Plan& onto = {}, Bringing how = {}) {
  const auto groups = usual(d);
  std::vector<Becomes> becomes;
  for (const ShapeGroup& g : groups) becomes.push_back(g.guess);
  how.placement = usual_placement(d, onto, d.unit > 0 ? d.unit : 1);
  return bring_in(onto, d, groups, becomes, how);
}

Plan sample_on_earth() {
  Plan plan = sample::half_acre();
  plan.map_place = MapPlace{43.07, -89.4, {12, -7}};
  return plan;
}

}  // namespace

TEST(MapFile, AParcelFileBecomesALotWithItsHouse) {
  const Brought b = brought(read({"site.geojson", sample::parcels_geojson(), {}}));
  EXPECT_EQ(b.lots.size(), 2u);
  EXPECT_EQ(b.counts.at(Becomes::house), 1);
  EXPECT_EQ(b.counts.at(Becomes::tree), 1);
  EXPECT_EQ(b.counts.at(Becomes::gas), 1);
  // The lot taken is the one with the house on it.
  const auto house = std::ranges::find(b.plan.site.features, FeatureKind::house, &Feature::kind);
  EXPECT_TRUE(contains(lot_ring(b.plan.site), house->points[0]));
  ASSERT_TRUE(b.plan.map_place.has_value());
}

TEST(MapFile, ALayerIsSplitByTheAttributeThatIsAskedFor) {
  const Drawing d = read({"site.geojson", sample::parcels_geojson(), {}});
  const auto labels = [&](const char* attribute) {
    std::vector<std::string> all;
    for (const ShapeGroup& g : groups_of(d, attributes_called(d, attribute)))
      all.push_back(group_label(d, g));
    return all;
  };
  EXPECT_EQ(labels(""),
            (std::vector<std::string>{"site: building", "site: gas main", "site: parcel", "site: tree"}));
  EXPECT_EQ(labels("name"), (std::vector<std::string>{"site", "site: Lot 14", "site: Lot 15", "site: Oak"}));
  EXPECT_EQ(labels("no such attribute"), (std::vector<std::string>{"site"}));
}

TEST(MapFile, TheLotThatWasPointedAtIsTaken) {
  const Drawing d = read({"site.geojson", sample::parcels_geojson(), {}});
  for (const Shape& s : d.shapes) {
    if (s.kind != ShapeKind::area || s.values[1].substr(0, 3) != "Lot") continue;
    Bringing how;
    how.lot_at = centroid(s.points);
    const Brought b = brought(d, {}, how);
    EXPECT_TRUE(contains(lot_ring(b.plan.site), usual_placement(d, {}, 1)(*how.lot_at)));
  }
}

// Two files of one neighbourhood, brought in one after the other, lie where they lie on the Earth.
TEST(MapFile, ASecondFileLiesWhereTheFirstOneSaysItDoes) {
  const Plan first = brought(read({"site.geojson", sample::parcels_geojson(), {}})).plan;
  const Brought second = brought(read({"site.kml", sample::parcels_kml(), {}}), first);
  const Ring before = lot_ring(first.site), after = lot_ring(second.plan.site);
  EXPECT_NEAR(area(before), area(after), 0.01);
  EXPECT_NEAR(distance(centroid(before), centroid(after)), 0, 0.002);
}

TEST(MapFile, WhatLiesAwayFromTheLotIsLeftOutAndSaid) {
  std::string far = sample::parcels_geojson();
  far.replace(far.find("[-89.39970,43.07045]"), 20, "[-89.39970,43.08045]");
  const Brought b = brought(read({"site.geojson", far, {}}));
  EXPECT_FALSE(b.counts.contains(Becomes::tree));
  EXPECT_TRUE(
      std::ranges::any_of(b.left_out, [](const LeftOut& l) { return l.what == "trees" && l.count == 1; }));
}

TEST(MapFile, AShapefileWithoutACoordinateSystemIsPlainLengths) {
  const Drawing d = read(sample::square_parcels_shp());
  EXPECT_EQ(d.unit, 0);
  EXPECT_FALSE(d.place.has_value());
  EXPECT_EQ(d.arrived, 2);
  EXPECT_EQ(usual(d)[0].guess, Becomes::lot_line);  // the file is called "parcels"
  DrawingFile without = sample::square_parcels_shp();
  without.beside.clear();
  EXPECT_EQ(read(without).arrived, 2);
}

TEST(MapFile, ABowTieIsLeftOutAndSaid) {
  const std::string tie =
      R"({"type":"Feature","properties":{"type":"parcel"},"geometry":{"type":"Polygon","coordinates":
      [[[-89.4,43.07],[-89.399,43.0705],[-89.399,43.07],[-89.4,43.0705],[-89.4,43.07]]]}})";
  const Drawing d = read({"lot.geojson", tie, {}});
  Bringing how;
  how.placement = usual_placement(d, {}, 1);
  const Brought b = bring_in({}, d, usual(d), {Becomes::lot_line}, how);
  EXPECT_FALSE(b.anything());
  ASSERT_EQ(b.left_out.size(), 1u);
  EXPECT_NE(b.left_out[0].why.find("cross"), std::string::npos) << b.left_out[0].why;
}

TEST(MapFile, ADrawingPassesBetweenProcessesUnchanged) {
  for (const DrawingFile& file :
       {DrawingFile{"site.geojson", sample::parcels_geojson(), {}},
        {"lot.dxf", sample::dxf_text(sample::in_order(sample::surveyed_lot())), {}}}) {
    const Drawing d = read(file);
    const auto again = drawing_from_json(drawing_to_json(d));
    ASSERT_TRUE(again.has_value());
    EXPECT_EQ(*again, d);
  }
  EXPECT_FALSE(drawing_from_json("").has_value());
  EXPECT_FALSE(drawing_from_json("{\"kind\":1}").has_value());
}

TEST(Export, EveryFormIsReadBackWithEveryThingWhereItWas) {
  for (double north : {1.5707963267948966, 1.2}) {
    Plan plan = sample_on_earth();
    plan.site.north = north;
    const Outcome outcome = solve(plan);
    const auto parts = export_parts(plan, outcome.layout, outcome.stake_out);
    ASSERT_FALSE(outcome.layout.trenches.empty());
    for (ExportForm form : {ExportForm::geojson, ExportForm::geopackage}) {
      const auto bytes = exported(form, plan, parts);
      ASSERT_TRUE(bytes.has_value()) << bytes.error().message();
      EXPECT_EQ(*bytes, *exported(form, plan, parts));  // the same plan, the same bytes
      const Drawing d = read({"plan" + std::string(ending_of(form)), *bytes, {}});
      EXPECT_EQ(d.arrived, static_cast<long>(parts.size()));
      // Back on the plan: the lot's corners to a millimetre.
      const Placement back = usual_placement(d, plan, 1);
      std::vector<Point> there;
      for (const Shape& s : d.shapes)
        for (Point p : s.points) there.push_back(back(p));
      for (const LotCorner& c : plan.site.lot) {
        double nearest = 1e9;
        for (Point p : there) nearest = std::min(nearest, distance(p, c.at));
        EXPECT_LT(nearest, 0.001);
      }
    }
  }
}

TEST(Export, DxfHoldsEveryPartOnItsLayer) {
  for (UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
    Plan plan = sample::half_acre();
    plan.units = units;
    plan.site.features[0].name = "Straße 7 \"井\"";
    const Outcome outcome = solve(plan);
    const auto parts = export_parts(plan, outcome.layout, outcome.stake_out);
    const auto bytes = exported(ExportForm::dxf, plan, parts);
    ASSERT_TRUE(bytes.has_value());
    const Drawing d = read({"plan.dxf", *bytes, {}});
    EXPECT_EQ(d.expected, static_cast<long>(parts.size()));
    EXPECT_EQ(d.arrived, d.expected);
    EXPECT_EQ(d.unit, units == UnitSystem::us ? 0.3048 : 1);
    std::map<std::string, int> wanted, found;
    for (const ExportPart& p : parts) ++wanted[p.layer];
    for (const Shape& s : d.shapes)
      if (s.text.empty()) ++found[d.layers[static_cast<std::size_t>(s.layer)].name];
    EXPECT_EQ(found, wanted);
    EXPECT_TRUE(std::ranges::any_of(d.shapes, [](const Shape& s) { return s.text == "Straße 7 \"井\""; }));
    // And it is a lot again.
    Bringing how;
    how.placement = {d.unit, 0, {0, 0}, {0, 0}};
    const auto groups = usual(d);
    std::vector<Becomes> becomes;
    for (const ShapeGroup& g : groups) becomes.push_back(g.guess);
    const Brought b = bring_in({}, d, groups, becomes, how);
    EXPECT_NEAR(area(lot_ring(b.plan.site)), area(lot_ring(plan.site)), 1e-3);
    std::map<FeatureKind, int> drawn, back;
    for (const Feature& f : plan.site.features) ++drawn[f.kind];
    for (const Feature& f : b.plan.site.features) ++back[f.kind];
    EXPECT_EQ(back, drawn);
  }
}

TEST(Export, SaysWhatItNeeds) {
  const Plan plan = sample::half_acre();
  const auto parts = export_parts(plan, {}, {});
  const auto refused = exported(ExportForm::geojson, plan, parts);
  ASSERT_FALSE(refused.has_value());
  EXPECT_EQ(refused.error().code, "no_map_place");
  EXPECT_TRUE(exported(ExportForm::geopackage, plan, parts).has_value());
  EXPECT_EQ(exported(ExportForm::dxf, Plan(), {}).error().code, "nothing_to_export");
}

TEST(BringIn, TwoClicksAndADistanceGiveTheScale) {
  EXPECT_NEAR(*unit_from({0, 0}, {30, 40}, 15.24), 0.3048, 1e-12);
  EXPECT_FALSE(unit_from({1, 1}, {1, 1}, 10).has_value());
  EXPECT_FALSE(unit_from({0, 0}, {1, 0}, 0).has_value());
  EXPECT_FALSE(unit_from({0, 0}, {1e300, 1e300}, 10).has_value());
}

TEST(BringIn, LayerNamesAreUnderstood) {
  const std::pair<const char*, Becomes> kNames[] = {
      {"V-PROP-LINE", Becomes::lot_line},    {"C-PROP-ESMT", Becomes::easement},
      {"V-BLDG-OTLN", Becomes::house},       {"Existing Building", Becomes::house},
      {"V-NGAS-UNDR", Becomes::gas},         {"E-POWR-UGND", Becomes::electric},
      {"E-POWR-OVHD", Becomes::left_out},    {"Leach Field", Becomes::drain_field},
      {"septicTank", Becomes::septic_tank},  {"V-PROP-LINE-TEXT", Becomes::left_out},
      {"V-WATR-WELL", Becomes::well},        {"WATER_MAIN", Becomes::water},
      {"V-TOPO-MINR", Becomes::heights},     {"TREES", Becomes::tree},
      {"parcels", Becomes::lot_line},        {"0", Becomes::left_out},
      {"Defpoints", Becomes::left_out},      {"reserve drain field", Becomes::reserve_field},
      {"V-SSWR-LEAC", Becomes::drain_field}, {"V-SSWR-RESV", Becomes::reserve_field},
      {"V-SITE-NDIG", Becomes::no_dig},      {"V-SSWR-UNDR", Becomes::sewer}};
  for (const auto& [name, becomes] : kNames) EXPECT_EQ(guess_of(name), becomes) << name;
}

}  // namespace underlawn
