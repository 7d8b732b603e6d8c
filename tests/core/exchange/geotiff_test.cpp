// SPDX-License-Identifier: GPL-3.0-or-later
// Heights in a GeoTIFF, written here byte by byte after TIFF 6.0 (Adobe 1992) and OGC GeoTIFF 1.1 (19-008r4):
// read as they stand, and harmless however they are spoiled.
#include <gtest/gtest.h>
#include <sys/resource.h>

#include <cmath>
#include <cstring>
#include <ctime>
#include <random>

#include "exchange/read_drawing.h"
#include "exchange/read_raster.h"

namespace underlawn {

namespace {

template <class T>
void put(std::string& out, T value) {
  char bytes[sizeof value];
  std::memcpy(bytes, &value,
              sizeof value);  // the tests run on little-endian machines, as the file says it is
  out.append(bytes, sizeof value);
}

struct Tag {
  std::uint16_t id, type;  // 3: 16 bits, 4: 32 bits, 12: double
  std::uint32_t count;
  std::string value;  // padded here where it fits into the entry, else put behind the directory
};

template <class T>
Tag tag(std::uint16_t id, std::uint16_t type, const std::vector<T>& values) {
  Tag t{id, type, static_cast<std::uint32_t>(values.size()), {}};
  for (T v : values) put(t.value, v);
  return t;
}

// One strip of 32-bit floats, uncompressed. A file of no `heights` says that it has cells and holds none.
std::string tiff_of(std::uint32_t columns, std::uint32_t rows, const std::vector<float>& heights,
                    std::uint32_t rows_a_strip) {
  using Short = std::uint16_t;
  const std::uint32_t strips = (rows + rows_a_strip - 1) / rows_a_strip;
  const std::uint32_t bytes = heights.empty() ? 0 : columns * rows_a_strip * 4;
  std::vector<std::uint32_t> offsets(strips, heights.empty() ? 0 : 8), counts(strips, bytes);
  const std::vector<Tag> tags = {
      tag<std::uint32_t>(256, 4, {columns}),
      tag<std::uint32_t>(257, 4, {rows}),
      tag<Short>(258, 3, {32}),  // bits
      tag<Short>(259, 3, {1}),   // not compressed
      tag<Short>(262, 3, {1}),   // black is nought
      tag<std::uint32_t>(273, 4, offsets),
      tag<Short>(277, 3, {1}),  // one number a cell
      tag<std::uint32_t>(278, 4, {rows_a_strip}),
      tag<std::uint32_t>(279, 4, counts),
      tag<Short>(339, 3, {3}),                                // floating point
      tag<double>(33550, 12, {2, 2, 0}),                      // a cell is 2 by 2
      tag<double>(33922, 12, {0, 0, 0, 500000, 4500000, 0}),  // upper left corner
      tag<Short>(34735, 3, {1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, 32616}),  // UTM 16 north
  };
  std::string out = "II";
  put<Short>(out, 42);
  const std::uint32_t data = static_cast<std::uint32_t>(heights.size() * 4);
  put<std::uint32_t>(out, 8 + data);
  for (float h : heights) put(out, h);
  put<Short>(out, static_cast<Short>(tags.size()));
  std::uint32_t behind = 8 + data + 2 + 12 * static_cast<std::uint32_t>(tags.size()) + 4;
  std::string more;
  for (const Tag& t : tags) {
    put(out, t.id);
    put(out, t.type);
    put(out, t.count);
    if (t.value.size() > 4) {
      put<std::uint32_t>(out, behind + static_cast<std::uint32_t>(more.size()));
      more += t.value;
    } else {
      out += t.value + std::string(4 - t.value.size(), '\0');
    }
  }
  put<std::uint32_t>(out, 0);
  return out + more;
}

std::string good_tiff() {
  std::vector<float> heights;
  for (int i = 0; i < 40 * 30; ++i) heights.push_back(100 + static_cast<float>(i % 40) + 0.25F * (i / 40));
  return tiff_of(40, 30, heights, 30);
}

double seconds() {
  return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

long most_kilobytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return usage.ru_maxrss;
}

}  // namespace

TEST(GeoTiff, EveryCellIsAHeightInItsMiddleOnTheEarth) {
  const auto d = read_drawing({"dem.tif", good_tiff(), {}});
  ASSERT_TRUE(d.has_value()) << d.error().message();
  EXPECT_EQ(d->kind, DrawingKind::raster);
  ASSERT_EQ(d->shapes.size(), 1200u);
  EXPECT_EQ(d->shapes[0].heights[0], 100);
  EXPECT_EQ(d->shapes.back().heights[0], 100 + 39 + 0.25 * 29);
  EXPECT_TRUE(d->place.has_value());
  EXPECT_NEAR(d->raster->spacing, 2, 0.002);  // the scale of UTM on its middle meridian is 0.9996
}

TEST(GeoTiff, FiftySpoiledOnesDoNoHarm) {
  std::mt19937 random(11);
  const std::string good = good_tiff();
  const std::size_t directory = good.size() - 700;  // damage where the numbers of the format are
  int refused = 0;
  for (int round = 0; round < 50; ++round) {
    std::string bad = good;
    if (round % 4 == 0) bad = bad.substr(0, random() % bad.size());
    if (round % 4 == 1)
      for (int i = 0; i < 6; ++i) bad[directory + random() % 700] = static_cast<char>(random());
    if (round % 4 == 2) bad.replace(directory + random() % 690, 4, "\xff\xff\xff\x7f");
    if (round % 4 == 3) bad.erase(random() % bad.size(), 1 + random() % 300);
    const double from = seconds();
    const auto d = read_drawing({"dem.tif", bad, {}});
    EXPECT_LT(seconds() - from, 10) << round;
    if (!d) {
      ++refused;
      EXPECT_FALSE(d.error().message().empty()) << round;
      continue;
    }
    EXPECT_LE(static_cast<long>(d->shapes.size()), kMostShapes);
    for (const Shape& s : d->shapes)
      ASSERT_TRUE(std::isfinite(s.points[0].x) && std::isfinite(s.heights[0])) << round;
  }
  EXPECT_GT(refused, 10) << "the damage is damage";
}

// A few hundred bytes that say they are gigabytes: cells that no strip holds count as nought.
TEST(GeoTiff, SmallFilesThatUnpackToEnormousOnesStayInBounds) {
  const long before = most_kilobytes();
  for (const auto& [side, strip] :
       std::vector<std::pair<std::uint32_t, std::uint32_t>>{{15'000, 100},
                                                            {15'000, 15'000},
                                                            {100'000, 100'000},
                                                            {190'000, 1'000},
                                                            {2'000'000'000, 2'000'000'000}}) {
    const double from = seconds();
    const auto d = read_drawing({"dem.tif", tiff_of(side, side, {}, strip), {}});
    EXPECT_LT(seconds() - from, 10) << side;
    EXPECT_LE(d ? static_cast<long>(d->shapes.size()) : 0, kMostShapes) << side;
    EXPECT_TRUE(d || !d.error().message().empty()) << side;
  }
  EXPECT_LT(most_kilobytes() - before, 1'000'000);
}

}  // namespace underlawn
