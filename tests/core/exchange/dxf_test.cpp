// SPDX-License-Identifier: GPL-3.0-or-later
// DXF files: what they hold, counted; what of it arrives, by both readers.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "exchange/bring_in.h"
#include "exchange/dxf_contents.h"
#include "exchange/library_session.h"
#include "exchange/read_parts.h"
#include "plane/region.h"
#include "support/drawing_files.h"

namespace underlawn {

namespace {

constexpr double kFoot = 0.3048, kPi = std::numbers::pi;

Drawing read(const std::string& bytes) {
  auto drawing = read_drawing({"lot.dxf", bytes, {}});
  EXPECT_TRUE(drawing.has_value()) << (drawing ? "" : drawing.error().message());
  return drawing ? *drawing : Drawing();
}

std::string lot_text() {
  return sample::dxf_text(sample::in_order(sample::surveyed_lot()));
}

// Length of all lines of each layer, which tells two readers apart if either loses or bends something.
std::map<std::string, double> lengths(const Drawing& d) {
  std::map<std::string, double> all;
  for (const Shape& s : d.shapes)
    if (s.kind == ShapeKind::line) all[d.layers[static_cast<std::size_t>(s.layer)].name] += length(s.points);
  return all;
}

bool says(const Drawing& d, const std::string& code) {
  return std::ranges::any_of(d.remarks, [&](const Trouble& t) { return t.code == code; });
}

Brought brought(const Drawing& d) {
  const auto groups = groups_of(d, {});
  std::vector<Becomes> becomes;
  for (const ShapeGroup& g : groups) becomes.push_back(g.guess);
  Bringing how;
  how.placement = usual_placement(d, Plan(), d.unit);
  return bring_in(Plan(), d, groups, becomes, how);
}

}  // namespace

TEST(Dxf, IsCountedAndArrivesWhole) {
  const Drawing d = read(lot_text());
  const std::map<std::string, long> held = {{"ARC", 1},        {"DIMENSION", 1}, {"INSERT", 2}, {"LINE", 6},
                                            {"LWPOLYLINE", 1}, {"POINT", 1},     {"TEXT", 1}};
  EXPECT_EQ(d.held, held);
  EXPECT_EQ(d.expected, 13);  // 6 lines, arc, polyline, point, two blocks of a circle and a line each
  EXPECT_EQ(d.arrived, 13);
  EXPECT_EQ(d.unit, kFoot);
  ASSERT_EQ(d.left_out.size(), 1u);
  EXPECT_EQ(d.left_out[0].what, "DIMENSION");
}

// Seen of the library's own driver: it refuses the second and third outright.
TEST(Dxf, ArrivesTheSameFromEveryFormOfTheFile) {
  const auto parts = sample::surveyed_lot();
  const Drawing whole = read(lot_text());
  for (const std::string& other :
       {sample::dxf_text(sample::in_order(parts), "\r\n"), sample::dxf_text(sample::blocks_first(parts)),
        sample::dxf_binary(sample::in_order(parts)), "\xef\xbb\xbf" + lot_text()}) {
    const Drawing d = read(other);
    EXPECT_EQ(d.shapes, whole.shapes);
    EXPECT_EQ(d.held, whole.held);
    EXPECT_EQ(d.layers, whole.layers);
  }
}

TEST(Dxf, DamageCostsOnlyWhatItHits) {
  std::string text = lot_text();
  text.insert(text.find("V-NGAS-UNDR\n", text.find("ENTITIES")) - 4, "rubbish that was never a group code\n");
  const Drawing d = read(text);
  EXPECT_TRUE(says(d, "dxf_damaged"));
  EXPECT_EQ(d.shapes.size(), read(lot_text()).shapes.size());

  const Drawing cut = read(lot_text().substr(0, lot_text().find("V-NGAS-UNDR", lot_text().find("ENTITIES"))));
  EXPECT_TRUE(says(cut, "dxf_cut_short"));
  EXPECT_GE(cut.arrived, 10);
}

TEST(Dxf, NamesAreReadWhateverTheHeaderSays) {
  const auto named = [](const Drawing& d, const std::string& name) {
    return std::ranges::any_of(d.layers, [&](const DrawingLayer& l) { return l.name == name; });
  };
  const Drawing utf8 = read(lot_text());
  EXPECT_TRUE(named(utf8, "Straße"));
  EXPECT_TRUE(says(utf8, "dxf_code_page"));
  std::string latin = lot_text();
  for (std::size_t at; (at = latin.find("ß")) != std::string::npos;) latin.replace(at, 2, "\xdf");
  const Drawing old = read(latin);
  EXPECT_TRUE(named(old, "Straße"));
  EXPECT_FALSE(says(old, "dxf_code_page"));
  std::string escaped = lot_text();
  for (std::size_t at; (at = escaped.find("ß")) != std::string::npos;) escaped.replace(at, 2, "\\U+00DF");
  EXPECT_TRUE(named(read(escaped), "Straße"));
}

TEST(Dxf, BothReadersBringTheSameLines) {
  const std::string bytes = lot_text();
  const auto tags = dxf_tags(bytes);
  ASSERT_TRUE(tags.has_value());
  const Drawing first = read(bytes);
  Drawing second;
  read_by_dxflib(plain_dxf(*tags, dxf_contents(*tags), recoded), first.tolerance, second);
  EXPECT_EQ(second.arrived, first.arrived);
  const auto a = lengths(first), b = lengths(second);
  ASSERT_EQ(a.size(), b.size());
  for (const auto& [layer, metres] : a) EXPECT_NEAR(b.at(layer), metres, 2e-3 * metres) << layer;
}

// Against the circle itself.
TEST(Dxf, ArcsKeepToTheStatedTolerance) {
  for (double radius : {0.5, 20.0, 300.0}) {
    const std::string r = std::to_string(radius);
    const Drawing d = read(sample::dxf_text(sample::dxf_drawing(
        {{0, "ARC"}, {8, "0"}, {10, "0"}, {20, "0"}, {40, r}, {50, "10"}, {51, "200"}}, 6)));
    ASSERT_EQ(d.shapes.size(), 1u);
    const Polyline& line = d.shapes[0].points;
    EXPECT_NEAR(d.tolerance, kArcTolerance, 1e-12);
    double worst = 0;
    for (std::size_t i = 0; i + 1 < line.size(); ++i)
      worst = std::max(worst, radius - norm(0.5 * (line[i] + line[i + 1])));
    EXPECT_LE(worst, 1.001 * d.tolerance) << radius;
    for (Point p : line) EXPECT_NEAR(norm(p), radius, 1e-6 * radius);
    EXPECT_LT(line.size(), 400u);
  }
}

TEST(Dxf, ABulgeEnclosesItsSegmentOfTheCircle) {
  const Brought b = brought(read(lot_text()));
  const auto house = std::ranges::find(b.plan.site.features, FeatureKind::house, &Feature::kind);
  ASSERT_NE(house, b.plan.site.features.end());
  // 50 x 30 ft, and on its right wall a circular segment: bulge 0.5 is an arc of 4 atan 0.5 over a chord of
  // 30 ft.
  const double sweep = 4 * std::atan(0.5), radius = 15 / std::sin(sweep / 2);
  const double segment = radius * radius / 2 * (sweep - std::sin(sweep));
  EXPECT_NEAR(area(house->points), (50 * 30 + segment) * kFoot * kFoot, 0.25 * kFoot * kFoot);
}

TEST(Dxf, LooseLinesAndAnArcBecomeTheLot) {
  const Brought b = brought(read(lot_text()));
  // Less a corner of 20 by 20 ft without its quarter of a circle.
  EXPECT_NEAR(area(lot_ring(b.plan.site)) / (kFoot * kFoot), 200 * 150 - (400 - kPi * 400 / 4), 0.5);
  EXPECT_EQ(b.counts.at(Becomes::tree), 2);
  EXPECT_EQ(b.counts.at(Becomes::gas), 1);
  ASSERT_EQ(b.plan.site.heights.size(), 1u);
  EXPECT_NEAR(b.plan.site.heights[0].height, 312.5 * kFoot, 1e-9);
}

TEST(Dxf, ABlockInItselfIsNotPutInPlaceForEver) {
  auto parts = sample::surveyed_lot();
  sample::DxfValues itself = {{0, "INSERT"}, {8, "0"}, {2, "OAK"}, {10, "1"}, {20, "0"}};
  parts.blocks.insert(parts.blocks.end() - 2, itself.begin(), itself.end());
  const Drawing d = read(sample::dxf_text(sample::in_order(parts)));
  EXPECT_TRUE(says(d, "dxf_blocks"));
  EXPECT_GE(d.arrived, 13);
}

// Ten levels of ten: ten thousand million lines, were they put in place.
TEST(Dxf, BlocksThatMultiplyAreRefusedBeforeTheyAreRead) {
  sample::DxfParts p = sample::surveyed_lot();
  p.blocks = {{0, "BLOCK"}, {8, "0"}, {2, "B0"}, {70, "0"}, {10, "0"}, {20, "0"}};
  const auto line = sample::dxf_line("0", {0, 0}, {1, 1});
  p.blocks.insert(p.blocks.end(), line.begin(), line.end());
  p.blocks.push_back({0, "ENDBLK"});
  for (int level = 1; level <= 10; ++level) {
    sample::DxfValues block = {{0, "BLOCK"}, {8, "0"},  {2, "B" + std::to_string(level)},
                               {70, "0"},    {10, "0"}, {20, "0"}};
    for (int i = 0; i < 10; ++i)
      for (const auto& v : sample::DxfValues{
               {0, "INSERT"}, {8, "0"}, {2, "B" + std::to_string(level - 1)}, {10, "0"}, {20, "0"}})
        block.push_back(v);
    block.push_back({0, "ENDBLK"});
    p.blocks.insert(p.blocks.end(), block.begin(), block.end());
  }
  p.entities = {{0, "INSERT"}, {8, "0"}, {2, "B10"}, {10, "0"}, {20, "0"}};
  const auto refused = read_drawing({"bomb.dxf", sample::dxf_text(sample::in_order(p)), {}});
  ASSERT_FALSE(refused.has_value());
  EXPECT_EQ(refused.error().code, "drawing_too_large");
}

}  // namespace underlawn
