// SPDX-License-Identifier: GPL-3.0-or-later
#include "plane/parallel.h"

#include <gtest/gtest.h>

#include <random>

#include "plane/region.h"

namespace underlawn {
namespace {

const Ring kSquare = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};

}  // namespace

TEST(Parallel, LineIsMitredAndTakesItsSide) {
  const Polyline left = parallel_line({{0, 0}, {10, 0}, {10, 10}}, 2);
  ASSERT_EQ(left.size(), 3U);
  EXPECT_EQ(left[0], (Point{0, 2}));
  EXPECT_NEAR(left[1].x, 8, 1e-12);
  EXPECT_NEAR(left[1].y, 2, 1e-12);
  EXPECT_EQ(left[2], (Point{8, 10}));
  EXPECT_NEAR(parallel_line({{0, 0}, {10, 0}, {10, 10}}, -2)[1].x, 12, 1e-12);
}

TEST(Parallel, ASharpCornerIsCutOff) {
  const Polyline line = parallel_line({{0, 0}, {10, 0}, {0, 1}}, -1);
  for (Point p : line) EXPECT_LT(norm(p - Point{10, 0}) > 5 ? 0 : norm(p - Point{10, 0}), 1.001);
}

TEST(Parallel, OutlineGrowsAndShrinksSquare) {
  EXPECT_NEAR(area(parallel_ring(kSquare, 1)), 144, 1e-9);
  EXPECT_NEAR(area(parallel_ring(kSquare, -2)), 36, 1e-9);
  EXPECT_TRUE(parallel_ring(kSquare, -6).empty());
  EXPECT_TRUE(parallel_ring({{0, 0}, {1, 1}}, 1).empty());
}

// Measured by distances alone, on drawings with reflex corners and narrow places.
TEST(Parallel, EverySideKeepsItsDistanceOnRandomOutlines) {
  std::mt19937_64 random(3);
  int whole = 0;
  for (int i = 0; i < 60; ++i) {
    Ring ring;
    const int n = 3 + static_cast<int>(random() % 9);
    for (int k = 0; k < n; ++k)
      ring.push_back((5 + static_cast<double>(random() % 1000) / 50) * direction(2 * M_PI * k / n));
    for (const double by : {0.8, -0.8, -3.0}) {
      const Ring beside = parallel_ring(ring, by);
      for (std::size_t a = 0; a < beside.size(); ++a)
        for (std::size_t b = 0; b < ring.size(); ++b)
          EXPECT_GE(distance(Segment{beside[a], beside[(a + 1) % beside.size()]},
                             Segment{ring[b], ring[(b + 1) % ring.size()]}),
                    std::abs(by) - 1e-4);
      whole += !beside.empty();
    }
  }
  EXPECT_GT(whole, 120);
}

TEST(Parallel, StripEndsOnTheNeighbouringEdges) {
  const Ring lot = {{0, 0}, {40, 0}, {45, 30}, {0, 30}};
  const Ring strip = strip_inside(lot, 0, 3);
  ASSERT_EQ(strip.size(), 4U);
  EXPECT_EQ(strip[0], (Point{0, 0}));
  EXPECT_NEAR(strip[2].x, 40.5, 1e-9);
  EXPECT_NEAR(strip[2].y, 3, 1e-9);
  EXPECT_NEAR(strip[3].x, 0, 1e-9);
  // The other way round it lies inside too.
  EXPECT_NEAR(area(strip_inside({lot.rbegin(), lot.rend()}, 2, 3)), area(strip), 1e-9);
  EXPECT_TRUE(strip_inside(lot, 9, 3).empty());
  EXPECT_TRUE(strip_inside(lot, 0, -1).empty());
}

}  // namespace underlawn
