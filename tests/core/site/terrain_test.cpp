// SPDX-License-Identifier: GPL-3.0-or-later
#include "site/terrain.h"

#include <gtest/gtest.h>

#include <random>

using namespace underlawn;

namespace {

std::vector<SpotHeight> scattered(unsigned seed, int count, const std::function<double(Point)>& level) {
  std::mt19937 draw(seed);
  std::uniform_real_distribution<double> place(0, 100);
  std::vector<SpotHeight> all;
  for (int i = 0; i < count; ++i) {
    const Point p = {place(draw), place(draw)};
    all.push_back({p, level(p)});
  }
  for (Point p : {Point{0, 0}, Point{100, 0}, Point{100, 100}, Point{0, 100}}) all.push_back({p, level(p)});
  return all;
}

double inclined(Point p) {
  return 3 + 0.06 * p.x - 0.02 * p.y;
}

bool in_circle(Point a, Point b, Point c, Point p) {
  const auto row = [&](Point q) { return std::array{q.x - p.x, q.y - p.y, dot(q - p, q - p)}; };
  const auto A = row(a), B = row(b), C = row(c);
  const double det = A[0] * (B[1] * C[2] - B[2] * C[1]) - A[1] * (B[0] * C[2] - B[2] * C[0]) +
                     A[2] * (B[0] * C[1] - B[1] * C[0]);
  return det > 1;  // m4: a millimetre's rounding
}

}  // namespace

// The definition (Delaunay 1934), and Euler's count: 2 n - 2 - h triangles over n points of which h on the
// hull.
TEST(Terrain, TrianglesAreThoseOfDelaunay) {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    const Terrain t(scattered(seed, 40, inclined));
    const auto at = [&](int k) { return t.heights()[static_cast<std::size_t>(k)].at; };
    EXPECT_EQ(t.triangles().size(), 2u * 44 - 2 - 4) << "seed " << seed;
    double area = 0;
    for (const Triangle& tri : t.triangles()) {
      const Point a = at(tri.corners[0]), b = at(tri.corners[1]), c = at(tri.corners[2]);
      area += cross(b - a, c - a) / 2;
      for (const SpotHeight& h : t.heights()) EXPECT_FALSE(in_circle(a, b, c, h.at)) << "seed " << seed;
    }
    EXPECT_NEAR(area, 1e4, 0.1);
  }
}

TEST(Terrain, AnInclinedPlaneIsFoundAgainEverywhere) {
  const Terrain t(scattered(7, 60, inclined));
  std::mt19937 draw(11);
  std::uniform_real_distribution<double> place(0, 100);
  for (int i = 0; i < 2000; ++i) {
    const Point p = {place(draw), place(draw)};
    EXPECT_NEAR(t.height(p), inclined(p), 1e-6);
    EXPECT_NEAR(t.steepest(p).x, 0.06, 1e-6);
    EXPECT_NEAR(t.steepest(p).y, -0.02, 1e-6);
  }
  const GroundLine g = t.along({{10, 10}, {60, 10}, {60, 40}});
  EXPECT_NEAR(g.length, 80, 1e-9);
  EXPECT_NEAR(g.lowest, inclined({10, 10}), 1e-6);
  EXPECT_NEAR(g.highest, inclined({60, 10}), 1e-6);
  EXPECT_NEAR(
      g.mean,
      (50 * (inclined({10, 10}) + inclined({60, 10})) + 30 * (inclined({60, 10}) + inclined({60, 40}))) / 160,
      1e-6);
  EXPECT_NEAR(g.along_slope, 50 * std::hypot(1, 0.06) + 30 * std::hypot(1, 0.02), 1e-6);
}

TEST(Terrain, BeyondWhatIsKnownTheGroundIsAsHighAsAtItsEdge) {
  const Terrain t(scattered(3, 10, inclined));
  EXPECT_NEAR(t.height({150, 50}), inclined({100, 50}), 1e-6);
  EXPECT_NEAR(t.height({-40, -40}), inclined({0, 0}), 1e-6);
}

TEST(Terrain, FewHeightsAndHeightsOnALineDo) {
  EXPECT_EQ(Terrain().height({3, 4}), 0);
  EXPECT_FALSE(Terrain().is_known());
  EXPECT_EQ(Terrain({{{1, 1}, 5}}).height({30, 4}), 5);
  const Terrain line({{{0, 0}, 1}, {{20, 0}, 3}, {{10, 0}, 2}});
  EXPECT_TRUE(line.triangles().empty());
  EXPECT_NEAR(line.height({5, 30}), 1.5, 1e-9);
  EXPECT_NEAR(line.height({50, 3}), 3, 1e-9);
}

TEST(Terrain, ContoursLieAtTheirHeightAndEndAtTheEdge) {
  const auto bowl = [](Point p) { return 0.002 * dot(p - Point{50, 50}, p - Point{50, 50}); };
  const Terrain t(scattered(5, 300, bowl));
  const auto all = contours(t, 0.5);
  ASSERT_FALSE(all.empty());
  int closed = 0;
  for (const Contour& c : all) {
    EXPECT_NEAR(std::remainder(c.height, 0.5), 0, 1e-9);
    for (Point p : c.line) EXPECT_NEAR(t.height(p), c.height, 1e-6);
    if (c.line.front() == c.line.back())
      ++closed;
    else
      for (Point end : {c.line.front(), c.line.back()})
        EXPECT_LT(std::min({end.x, end.y, 100 - end.x, 100 - end.y}), 1e-6);
  }
  EXPECT_GT(closed, 3);  // below 5 m the circles lie inside the square
  EXPECT_TRUE(contours(t, 1e-9).empty());
}
